#include "verbs/verb.h"

#include <cstdio>

int main()
{
    std::fputs("usage: doorloom VERB ...\n", stderr);
    return 2;
}
