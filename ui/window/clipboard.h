#pragma once

namespace doorloom {

class Window;

// Part of a job by way of the desktop's clipboard, between jobs and windows alike.
void copyChosen(Window& window);
void pasteCopied(Window& window);

} // namespace doorloom
