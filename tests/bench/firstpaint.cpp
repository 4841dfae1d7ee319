#include <QCoreApplication>
#include <QEvent>
#include <QWidget>

#include <cstdlib>

#include <unistd.h>

// Preloaded into a program that is started to be measured: as soon as its first window has been painted it
// says so and ends. The program itself knows nothing of it.
namespace {

class FirstPaint : public QObject {
public:
    using QObject::QObject;

    bool eventFilter(QObject* watched, QEvent* event) override
    {
        const bool paints = event->type() == QEvent::Paint && watched->isWidgetType() &&
                            static_cast<QWidget*>(watched)->isWindow();
        if (paints) // once it and what is in it are on the screen
            QMetaObject::invokeMethod(this, &FirstPaint::tell, Qt::QueuedConnection);
        return false;
    }

private:
    static void tell()
    {
        constexpr char words[] = "painted\n";
        std::_Exit(::write(STDOUT_FILENO, words, sizeof words - 1) > 0 ? 0 : 1);
    }
};

void watch()
{
    qApp->installEventFilter(new FirstPaint(qApp)); // the application's
}

} // namespace

Q_COREAPP_STARTUP_FUNCTION(watch)
