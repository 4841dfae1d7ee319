#pragma once

#include <memory>
#include <string>
#include <vector>

// What a kind's JSON can hold, as data: a form is made from it, so that no member is forgotten.
namespace doorloom {

struct FormMember;

struct FormType {
    enum class Sort {
        Text,
        Number,
        Whole,
        Truth,
        Word,         // one of `words`
        NumberOrText, // a setting's value
        Pairs,        // an object of texts: {"K1.JA": "wet"}
        Object,       // with `members`
        List,         // of `item`
        Part          // an object whose 'type', one of `words`, says which of `alternatives` are its members
    } sort = Sort::Text;
    std::vector<std::string> words{};
    std::vector<FormMember> members;
    std::shared_ptr<const FormType> item{};
    std::vector<std::vector<FormMember>> alternatives;

    // A list of texts or pairs, short enough for one line.
    bool isLine() const
    {
        return sort != Sort::Object && sort != Sort::Part && (sort != Sort::List || item->sort == Sort::Text);
    }
};

struct FormMember {
    std::string name; // as in the file: "clampCapacity"
    FormType type;
    bool needed = false;
};

// Made from the shapes that kinds are read by. Cost: made once
const FormType& kindForm();

} // namespace doorloom
