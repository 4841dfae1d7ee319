#pragma once

#include "base/text.h"
#include "model/job.h"

#include <cstdint>
#include <string>
#include <vector>

// What a change does, in words for the menu of undo: `undoWords(job, doing::move, rows)`, "move PS1, LM1".
namespace doorloom {

namespace doing {

inline constexpr Text place = {.en = "place {names}", .es = "colocar {names}"};
inline constexpr Text takeOffSheet = {.en = "take {names} off the sheet", .es = "quitar {names} de la hoja"};
inline constexpr Text move = {.en = "move {names}", .es = "mover {names}"};
inline constexpr Text align = {.en = "align {names}", .es = "alinear {names}"};
inline constexpr Text turn = {.en = "turn {names}", .es = "girar {names}"};
inline constexpr Text tidy = {.en = "tidy the sheet", .es = "ordenar la hoja"};
inline constexpr Text bend = {.en = "bend {names}", .es = "doblar {names}"};
inline constexpr Text straighten = {.en = "let {names} run freely",
                                    .es = "dejar libre el trazado de {names}"};
inline constexpr Text note = {.en = "write a note", .es = "escribir una nota"};
inline constexpr Text reword = {.en = "reword a note", .es = "cambiar una nota"};
inline constexpr Text addSheet = {.en = "add the sheet {names}", .es = "añadir la hoja {names}"};
inline constexpr Text reorderSheets = {.en = "put the sheets in another order", .es = "reordenar las hojas"};
inline constexpr Text fillInfo = {.en = "fill in the title block", .es = "rellenar el cajetín"};
inline constexpr Text land = {.en = "land {names}", .es = "conectar {names}"};
inline constexpr Text unland = {.en = "take off {names}", .es = "desconectar {names}"};
inline constexpr Text pull = {.en = "pull {names}", .es = "tender {names}"};
inline constexpr Text cap = {.en = "cap {names}", .es = "reservar {names}"};
inline constexpr Text insulate = {.en = "insulate {names}", .es = "aislar {names}"};
inline constexpr Text splice = {.en = "splice {names}", .es = "empalmar {names}"};
inline constexpr Text set = {.en = "set {names}", .es = "ajustar {names}"};
inline constexpr Text rename = {.en = "rename {names}", .es = "renombrar {names}"};
inline constexpr Text alter = {.en = "alter {names}", .es = "modificar {names}"};
inline constexpr Text add = {.en = "add {names}", .es = "añadir {names}"};
inline constexpr Text paste = {.en = "paste {names}", .es = "pegar {names}"};
inline constexpr Text remove = {.en = "remove {names}", .es = "eliminar {names}"};

} // namespace doing

// In: the job in which the rows have their names: before a removal, after an addition.
Message undoWords(const Job& job, Text what, const std::vector<std::uint32_t>& rows = {});

// "PS1, LM1, EL1 +4": a few names of rows, of whatever tables. Rows that are not there are left out.
std::string namesOfRows(const Job& job, const std::vector<std::uint32_t>& rows);

} // namespace doorloom
