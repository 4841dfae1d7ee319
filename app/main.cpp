#include "verbs/verb.h"
#include "window.h"

#include <csignal>
#include <cstdio>
#include <exception>
#include <string>
#include <vector>

namespace {

using doorloom::Exit;
using doorloom::Reply;

bool write(const std::string& words, std::FILE* stream)
{
    return std::fwrite(words.data(), 1, words.size(), stream) == words.size() && std::fflush(stream) == 0;
}

int ownError(const char* what)
{
    std::fprintf(stderr,
                 "doorloom: the program made a mistake: %s\n"
                 "This is no answer about the job. Please report it with the file that you gave.\n",
                 what);
    return static_cast<int>(Exit::OwnError);
}

int tell(const Reply& reply)
{
    if (!write(reply.out, stdout)) {
        write("doorloom: the answer can't be written to the output. Free some space, or name another file.\n",
              stderr);
        return static_cast<int>(Exit::Refused);
    }
    write(reply.err, stderr);
    return static_cast<int>(reply.exit);
}

} // namespace

int main(int count, char** arguments)
{
    // A file that grows past a limit is then a write that fails, with a message, like a full disk.
    std::signal(SIGXFSZ, SIG_IGN);
    try {
        const std::vector<std::string> words(arguments + (count > 0), arguments + count);
        return doorloom::asksForWindow(words) ? doorloom::runWindow(words) : tell(doorloom::reply(words));
    } catch (const std::exception& error) {
        return ownError(error.what());
    } catch (...) {
        return ownError("unknown");
    }
}
