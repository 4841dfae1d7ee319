#pragma once

#include "base/json.h"
#include "catalogue/kindform.h"

#include <QTreeWidget>

#include <span>
#include <string>
#include <vector>

namespace doorloom {

// A kind as a form: every member that a kind's file can have, with its value beside it. What stands empty is
// left out of the file.
class KindTree : public QTreeWidget {
    Q_OBJECT
public:
    explicit KindTree(QWidget* parent = nullptr);

    void fill(const Json& kind);
    std::string text() const;           // the JSON as it is filled in, right or not
    void goTo(const std::string& path); // "parts[3].a": as far as it is there
    QTreeWidgetItem* at(const std::string& path) const;
    QString wordsOf(const std::string& path) const; // "parts behind the terminals › 3: load coil › one end"
    void mark(const std::vector<std::string>& paths); // what there is to correct, and nothing else

    bool canAdd() const; // a list, or an entry of one, is chosen
    bool canTakeOut() const;
    void add();      // an entry to the list that is chosen
    void addAlike(); // after the entry that is chosen, with its values
    void takeOut();

signals:
    void altered();

private:
    void build(QTreeWidgetItem* item, const FormType& type, const Json* value);
    // In: members that live as long as the program: their types are looked at as long as their rows are there
    void buildMembers(QTreeWidgetItem* item, std::span<const FormMember> members, const Json* value);
    QTreeWidgetItem* addEntry(QTreeWidgetItem* list, const Json* value, int place);
    void valueAltered(QTreeWidgetItem* item, int column);
    QTreeWidgetItem* listOfChosen() const;
    QTreeWidgetItem* entryOfChosen() const;
    void nameEntries(QTreeWidgetItem* list); // "3: NO"

    bool building_ = false;
};

} // namespace doorloom
