// A panel as a value: what the tray, a slip or the margin shows, without a word of HTML. One painter in web turns any
// panel into a page part; tests read the value. The nine kinds of item are all the painter knows.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/sheet/paper.h"
#include "shell/panels/keypad.h"
#include "shell/value.h"

namespace fogsheet {

/// A command and its arguments, as a press sends them (commands.h).
struct Press {
  std::string command;
  Value arguments = Value::object();
};

struct HeadingItem {
  std::string text;
  std::string beside;  // the soft line under it; may be empty
  int level = 2;       // 2: the panel's own; 3: a part of it
};

enum class LineTone { body, soft, strong };

/// A line of words, with a value at its right end or without; or large readings side by side.
struct LineItem {
  struct Reading {
    std::string figures;  // "096"
    std::string unit;     // "°T"
    std::string under;    // "back 276°T"
  };
  std::string text;
  std::string value;
  LineTone tone = LineTone::body;
  std::vector<Reading> readings;  // when there are any, text is what a screen reader says for them, announced once
};

struct FieldItem {
  std::string name;    // unique in the panel
  std::string label;
  std::string text;    // what stands in it
  std::string unit;
  std::string error;   // the reason under it; empty when all is well
  bool multiline = false;
  int completes_at = 0;       // so many figures are a whole entry: it is sent at once and the field stays in hand; 0: never
  bool figures_only = false;  // a touch screen's own keyboard offers figures alone
  Pad pad = Pad::none;        // opens under it for a finger or a pen
  std::string letter;         // in force when none is typed: "T"
  bool as_typed = false;  // and at each letter, as it is typed
  Press on_leave;      // sent with argument "text" when the field is left or Enter is pressed
};

struct ChoiceItem {
  struct Option {
    std::string value;
    std::string label;
  };
  std::string name;
  std::string label;
  std::vector<Option> options;
  std::string chosen;
  std::string argument;  // the name under which the chosen value is sent
  bool is_long = false;  // too many to lie side by side: one line that opens
  Press on_choose;
};

enum class ButtonLook { plain, main, well, cross, thing };  // well: a tool in the tray; cross: the close sign of a slip; thing: a line of the outline

struct ButtonItem {
  std::string name;   // unique in the panel; "tool/straight-edge"
  std::string label;
  std::string icon;   // name of a sign drawn by us; empty for none
  std::string key;    // its key, as shown on a desktop; empty for none
  ButtonLook look = ButtonLook::plain;
  std::optional<bool> pressed;  // set for what can be in hand
  bool enabled = true;
  std::string reason;  // why not now
  bool at_end = false;  // tray: in the group at the right end
  bool hold = false;    // pressed by holding it for 0.8 s, or by Enter twice: what is hard to take back at sea
  Press on_press;
  Press on_focus;       // sent when the keys come to it; none where that means nothing
};

enum class SumRow { direction, correction, result };

struct ColumnSumItem {
  struct Row {
    SumRow kind = SumRow::direction;
    std::string word;     // "variation"
    std::string reason;   // "west: reads more, add"; may be empty
    std::string sign;     // "+", "−" or empty
    std::string figures;  // "9", "105"; empty where something was not entered
    std::string letter;   // "°W", "°M"
    std::string beside;   // "105.8 by tenths"; or "not entered"
  };
  std::string name;     // "chain"
  std::string caption;  // read aloud first
  std::vector<Row> rows;
};

struct TableItem {
  struct Column {
    std::string label;
    bool figures = false;  // set right, in figures of one width
  };
  std::string name;
  std::string caption;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  std::vector<Press> row_presses;  // of each row, by its first cell; none when rows can't be pressed
  std::vector<std::string> row_pictures = {};  // SVG with ink classes, before each row's first cell; none for rows without
  std::string when_empty;  // shown in place of a table without rows
};

struct CautionItem {
  std::string text;    // the bold line that names the thing
  std::string advice;  // what to do
};

/// A drawing by core, as SVG with ink classes; `text` is what it says to who can't see it.
struct FigureItem {
  /// One that is turned, by hand and by keys: a slider. Each step sends so much more or less.
  struct Wheel {
    double value = 0;
    double most = 0;      // either way
    std::string text;     // the value in words
    double step = 1;
    double pitch = 0.1;   // of the figure's width that a step is dragged by
    std::string argument;
    Press on_turn;
  };
  std::string name;
  std::string text;
  std::string svg;
  std::optional<Wheel> wheel = {};
};

using PanelItem = std::variant<HeadingItem, LineItem, FieldItem, ChoiceItem, ButtonItem, ColumnSumItem, TableItem, CautionItem, FigureItem>;

/// whole: in place of the sheet, where it can't be drawn. page: on paper alone, where it is all there is; not on the screen.
enum class PanelPlace { tray, slip, margin, outline, whole, page };

struct Panel {
  std::string name;   // "tray", "straight-edge", "more"; where("panel/NAME")
  std::string label;  // for who can't see it
  PanelPlace place = PanelPlace::slip;
  std::optional<std::size_t> beside_from;  // a broad slip, in the sheet's room where there is much: from this item on beside the rest
  std::optional<PaperSize> paper;  // in PanelPlace::page: its figures are pages of that size, true to scale; none: it flows on any
  bool deaf = false;  // takes no press: touch is locked
  std::string in_focus;  // the item that the keys are on, or the panel's own name for all of it; empty when it does not say
  Press on_leave;        // sent when the focus leaves the panel
  std::vector<PanelItem> items;
};

/// As a tree for the painter: {name, label, place, items: [{kind, ...}]}, members named as the fields above.
Value to_value(const Panel& panel);

}  // namespace fogsheet
