#pragma once

#include "catalogue/kindform.h"

#include <Qt>

#include <string>

class QTreeWidgetItem;

// The rows of a kind's form: what each is, what is filled in, and the JSON of it.
namespace doorloom {

inline constexpr int typeRole = Qt::UserRole, nameRole = Qt::UserRole + 1, neededRole = Qt::UserRole + 2;

const FormType& typeOf(const QTreeWidgetItem* row);
std::string nameOf(const QTreeWidgetItem* row); // as in the file; empty for an entry of a list
bool isNeeded(const QTreeWidgetItem* row);
std::string valueOf(const QTreeWidgetItem* row);
QTreeWidgetItem* childNamed(const QTreeWidgetItem* row, const std::string& name); // null when absent

// What to make of a row in which nothing is filled in.
enum class Emptiness { LeftOut, Written };

// Out: empty where it is to be left out
std::string textOf(const QTreeWidgetItem* row, Emptiness empty);

} // namespace doorloom
