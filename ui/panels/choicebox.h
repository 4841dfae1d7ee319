#pragma once

#include <QComboBox>

namespace doorloom {

// A choice that makes its list when somebody turns to it: in a large job there are thousands of operators to
// choose from. The wheel turns it only while it has the keyboard, so that scrolling past it changes nothing.
class ChoiceBox : public QComboBox {
    Q_OBJECT
public:
    ChoiceBox(const QString& now, QWidget* parent);

    void ask(); // for its list, unless it has it
    void offer(const QStringList& words, int current);
    void showPopup() override;

signals:
    void asked(); // offer the words now; once

protected:
    void focusInEvent(QFocusEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    bool isAsked_ = false;
};

} // namespace doorloom
