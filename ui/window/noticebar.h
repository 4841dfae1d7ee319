#pragma once

#include "base/result.h"

#include <QFrame>

#include <optional>

class QLabel;

namespace doorloom {

// A line above the sheet that says what was refused and what to do; it stays until it is put away or
// something else is said.
class NoticeBar : public QFrame {
    Q_OBJECT
public:
    explicit NoticeBar(QWidget* parent = nullptr);

    void say(const QString& words); // nothing: it goes
    QString words() const;

private:
    QLabel* label_;
};

} // namespace doorloom
