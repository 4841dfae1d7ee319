#pragma once

#include "edit/typedline.h"
#include "openjob/openjob.h"

#include <QWidget>

class QComboBox;
class QLineEdit;
class QTreeWidget;
class QTreeWidgetItem;

namespace doorloom {

// What can be had: kinds of device and types of cable, found by typing a few letters.
class Shelf : public QWidget {
    Q_OBJECT
public:
    // In: what is in stock, which must live as long as the shelf
    Shelf(OpenJob& open, const Stock& stock, QWidget* parent = nullptr);

    void setStock(const Stock& stock);
    void startTyping();    // the letters are chosen, so that new ones take their place
    PlaceId place() const; // where new devices go; nothing: not said

signals:
    void picked(const doorloom::Kind& kind);           // it is to hang on the pointer
    void wanted(const doorloom::Kind& kind);           // it is to be set down at once
    void cablePicked(const doorloom::CableType& type); // it is to be pulled
    void placeWanted(const QString& words);            // a place that the job does not have

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void fill();
    void addFamily(const QString& family, const std::vector<const Kind*>& kinds);
    void addCables(const QString& letters);
    void showPlaces();
    void pick(QTreeWidgetItem* item);
    void takeFirst();

    OpenJob& open_;
    Stock stock_;
    Table<Place> shownPlaces_; // a copy, to see whether they are others now
    QLineEdit* letters_;
    QComboBox* place_;
    QTreeWidget* list_;
};

} // namespace doorloom
