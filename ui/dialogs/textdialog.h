#pragma once

#include <QDialog>

namespace doorloom {

// Words to read, with a button to put them away.
class TextDialog : public QDialog {
    Q_OBJECT
public:
    TextDialog(const QString& title, const QString& html, QWidget* parent = nullptr);
};

} // namespace doorloom
