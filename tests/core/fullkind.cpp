#include "core/fullkind.h"

namespace doorloom {

Kind fullKind()
{
    const Condition wet = {{"K1", "JA", "wet"}, {"K1", "JB", "wet"}};
    const auto words = [](const char* en, const char* es) { return Words{en, es}; };
    Kind kind;
    kind.name = "everything-2";
    kind.title = words("Everything", "Todo");
    kind.words = words("All there is.", "Todo lo que hay.");
    kind.family = "logic";
    kind.standing = ValueStanding::Sheet;
    kind.roles = {{"K1",
                   OperatorNature::Relay,
                   words("relay 1", "relé 1"),
                   {{"rest", words("at rest", "en reposo")}, {"in", words("in", "activado")}},
                   "rest",
                   "in",
                   true},
                  {"magnet",
                   OperatorNature::Sensor,
                   words("magnet", "imán"),
                   {{"in", words("near", "cerca")}, {"rest", words("away", "lejos")}},
                   "rest",
                   "rest",
                   false},
                  {"mains",
                   OperatorNature::Mains,
                   words("mains", "red"),
                   {{"on", words("on", "hay")}, {"lost", words("lost", "falta")}},
                   "lost",
                   "on",
                   false}};
    Terminal plus{"+",
                  "+",
                  words("plus", "positivo"),
                  {{}, wet},
                  "RD",
                  {"22 AWG", "14 AWG"},
                  1,
                  Millimetres{6.5},
                  NewtonMetres{0.4},
                  {{wet, words("+ always", "+ siempre")}},
                  ValueStanding::Sheet};
    Terminal minus;
    minus.key = "-";
    minus.printed = "−";
    Terminal in = minus;
    in.key = in.printed = "IN1";
    kind.strips = {{words("supply", "alimentación"), {plus, minus}}, {{}, {in}}};
    kind.options = {{"K1",
                     words("output 1", "salida 1"),
                     {{"wet", words("wet", "con tensión")}, {"dry", words("dry", "seca")}},
                     {{"JA", words("jumper A", "puente A")}, {"JB", {}}},
                     "dry",
                     ValueStanding::CommonPractice}};
    kind.settings = {{"hold",
                      words("hold", "retención"),
                      Setting::Form::Potentiometer,
                      "s",
                      0.5,
                      30,
                      {},
                      5.0,
                      1.0,
                      ValueStanding::Sheet},
                     {"mode",
                      words("mode", "modo"),
                      Setting::Form::Dip,
                      "",
                      0,
                      0,
                      {{"a", words("A", "A")}, {"b", words("B", "B")}},
                      "a",
                      "b",
                      ValueStanding::Memory}};
    kind.parts = {
        {"link", {}, LinkPart{"+", ".p"}, ValueStanding::CommonPractice},
        {"contact", wet,
         ContactPart{"-",
                     ".k",
                     "K1",
                     {"in"},
                     {Amperes{1}, Amperes{2}, Amperes{3}, Amperes{4}, Volts{30}, Volts{1}, Amperes{0.01}},
                     true},
         ValueStanding::Sheet},
        {"load",
         {},
         LoadPart{"+",
                  "-",
                  LoadUse::Lock,
                  true,
                  true,
                  Current::Either,
                  {{Volts{12}, Amperes{0.3}}, {Volts{24}, Amperes{0.15}}},
                  LoadLaw::ConstantPower,
                  Volts{10},
                  Volts{28},
                  Volts{2},
                  Volts{9},
                  Amperes{1},
                  Milliseconds{40},
                  Duty::Intermittent,
                  0.75},
         ValueStanding::Sheet},
        {"move",
         {},
         MovePart{"K1",
                  MoveManner::Follows,
                  "load",
                  {{"mains", "on"}, {"magnet", "in"}},
                  {"input"},
                  "magnet",
                  true,
                  Milliseconds{50},
                  Milliseconds{500}},
         ValueStanding::Sheet},
        {"input",
         {},
         DryInputPart{"IN1",
                      "-",
                      Volts{5},
                      Ohms{4700},
                      true,
                      true,
                      true,
                      Ohms{300},
                      {{words("short", "corto"), Ohms{0}, Ohms{100}}}},
         ValueStanding::Sheet},
        {"source",
         {},
         SourcePart{".p",
                    "-",
                    true,
                    true,
                    true,
                    Volts{23},
                    Volts{24},
                    Volts{27.6},
                    Volts{21},
                    Amperes{2.5},
                    "Class 2",
                    {{{"mains", "on"}}, {{"K1", "in"}, {"magnet", "rest"}}}},
         ValueStanding::Sheet},
        {"port", {}, BatteryPortPart{"+", "-", Volts{24}, Amperes{0.5}}, ValueStanding::Sheet},
        {"battery", {}, BatteryPart{"+", "-", Volts{24}, AmpereHours{7}}, ValueStanding::Sheet},
        {"signal", {}, SignalPart{"IN1", "-", "D0"}, ValueStanding::Sheet},
        {"earth", {}, EarthPart{"-"}, ValueStanding::Sheet},
        {"inlet", {}, MainsPart{"IN1", "mains"}, ValueStanding::Sheet},
        {"diode", {}, DiodePart{"-", "+", Volts{0.3}}, ValueStanding::Sheet},
        {"resistor", {}, ResistorPart{"IN1", "-", Ohms{8200}}, ValueStanding::Sheet},
        {"suppressor", {}, SuppressorPart{"+", "-", Volts{40}}, ValueStanding::Sheet},
        {"fuse", {}, FusePart{"+", ".q", Amperes{1.1}}, ValueStanding::Sheet}};
    kind.outputs = {{"K1", "K1", "wet", {"+", "-", "IN1"}}};
    kind.lock = Lock{FailMode::StaysPut, "load", true, false, Milliseconds{300}};
    return kind;
}

} // namespace doorloom
