#pragma once

#include <memory>

class QGuiApplication;

namespace doorloom {

// What Qt needs before it draws a page where no window is opened: always on the offscreen platform, so that
// the page is the same with a display, without one and with a platform named that is not there.
std::unique_ptr<QGuiApplication> paperApplication();

} // namespace doorloom
