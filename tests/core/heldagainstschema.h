#pragma once

#include <string>
#include <vector>

namespace doorloom::test {

enum class Schema { Job, Kind };

struct SchemaCase {
    Schema schema;
    std::string text;
};

// Whether this program takes the file by its shape alone: keys, types, words, counts, limits. Nothing where the text
// is no JSON at all.
enum class ShapeVerdict { Fits, Refused, NoJson };
ShapeVerdict shapeVerdict(const SchemaCase& held);

// Empty, or which program is missing.
std::string missingForSchemas();

// Has python3-jsonschema judge each case that is JSON by resources/schemas, and expects what shapeVerdict says.
void expectSchemasAgree(const std::vector<SchemaCase>& cases);

// A file that a test holds against a reader: held against the schema too, with all the others, when the tests end.
void holdAgainstSchema(Schema schema, std::string text);

} // namespace doorloom::test
