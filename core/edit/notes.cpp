#include "edit/drawing.h"

#include "edit/draft.h"
#include "edit/rownames.h"

#include <utility>

namespace doorloom {

namespace {

bool isBlank(const std::string& words)
{
    return words.find_first_not_of(" \t\r\n") == std::string::npos;
}

} // namespace

Result<std::pair<NoteId, Change>> addNote(const Job& job, Numbers& numbers, SheetId sheet, Point at,
                                          std::string words)
{
    if (!job.sheets.find(sheet))
        return notInJob(nounOf<Sheet>());
    if (isBlank(words))
        return problemAt({}, {.en = "A note has the words ''.", .es = "Una nota tiene el texto ''."},
                         {.en = "Write what it should say.", .es = "Escriba lo que debe decir."}, {});
    Note note{.id = {numbers.take()}, .sheet = sheet, .at = at, .words = std::move(words)};
    return std::pair(note.id, Change{{Put<Note>{note.id, note}}});
}

Result<Change> rewordNote(const Job& job, NoteId note, std::string words)
{
    Draft draft(job);
    Note* row = draft.edit(note);
    if (!row)
        return notInJob(nounOf<Note>());
    if (isBlank(words))
        draft.remove(note);
    else
        row->words = std::move(words);
    return draft.change();
}

Result<Change> removeNote(const Job& job, NoteId note)
{
    return rewordNote(job, note, {});
}

} // namespace doorloom
