#include "print/printwords.h"

namespace doorloom {

QString printWords(const std::string& text)
{
    QString shown = QString::fromStdString(text);
    for (QChar& letter : shown)
        if (letter.unicode() < 0x20)
            letter = ' ';
    return shown;
}

QString printWords(const Message& message, Language language)
{
    return printWords(inWords(message, language));
}

QString printWords(Text text, Language language)
{
    return printWords(std::string(inWords(text, language)));
}

} // namespace doorloom
