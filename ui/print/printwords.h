#pragma once

#include "base/text.h"

#include <QString>

#include <string>

namespace doorloom {

// A paper's words as Qt has them; a line end or tab in a name becomes a blank.
QString printWords(const std::string& text);
QString printWords(const Message& message, Language language);
QString printWords(Text text, Language language);

} // namespace doorloom
