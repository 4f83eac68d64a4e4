#include "shell/panels/panel.h"

namespace fogsheet {
namespace {

Value press_value(const Press& press) { return Value::object({{"command", press.command}, {"arguments", press.arguments}}); }

Value item(const HeadingItem& heading) {
  return Value::object({{"kind", "heading"}, {"text", heading.text}, {"beside", heading.beside}, {"level", heading.level}});
}

Value item(const LineItem& line) {
  const char* tone = line.tone == LineTone::soft ? "soft" : line.tone == LineTone::strong ? "strong" : "body";
  Value readings = Value::list();
  for (const LineItem::Reading& reading : line.readings) readings.add(Value::object({{"figures", reading.figures}, {"unit", reading.unit}, {"under", reading.under}}));
  return Value::object({{"kind", "line"}, {"text", line.text}, {"value", line.value}, {"tone", tone}, {"readings", readings}});
}

Value item(const FieldItem& field) {
  return Value::object({{"kind", "field"}, {"name", field.name}, {"label", field.label}, {"text", field.text}, {"unit", field.unit}, {"error", field.error},
                        {"multiline", field.multiline}, {"completes_at", field.completes_at}, {"figures_only", field.figures_only}, {"as_typed", field.as_typed}, {"pad", to_value(field.pad)}, {"letter", field.letter}, {"on_leave", press_value(field.on_leave)}});
}

Value item(const ChoiceItem& choice) {
  Value options = Value::list();
  for (const ChoiceItem::Option& option : choice.options) options.add(Value::object({{"value", option.value}, {"label", option.label}}));
  return Value::object({{"kind", "choice"}, {"name", choice.name}, {"label", choice.label}, {"options", options}, {"chosen", choice.chosen},
                        {"argument", choice.argument}, {"is_long", choice.is_long}, {"on_choose", press_value(choice.on_choose)}});
}

Value item(const ButtonItem& button) {
  constexpr const char* k_looks[] = {"plain", "main", "well", "cross", "thing"};
  return Value::object({{"kind", "button"}, {"name", button.name}, {"label", button.label}, {"icon", button.icon}, {"key", button.key},
                        {"look", k_looks[static_cast<int>(button.look)]}, {"pressed", button.pressed ? Value(*button.pressed) : Value()},
                        {"enabled", button.enabled}, {"reason", button.reason}, {"at_end", button.at_end}, {"hold", button.hold}, {"on_press", press_value(button.on_press)}, {"on_focus", press_value(button.on_focus)}});
}

Value item(const ColumnSumItem& sum) {
  constexpr const char* k_rows[] = {"direction", "correction", "result"};
  Value rows = Value::list();
  for (const ColumnSumItem::Row& row : sum.rows)
    rows.add(Value::object({{"kind", k_rows[static_cast<int>(row.kind)]}, {"word", row.word}, {"reason", row.reason}, {"sign", row.sign}, {"figures", row.figures},
                            {"letter", row.letter}, {"beside", row.beside}}));
  return Value::object({{"kind", "sum"}, {"name", sum.name}, {"caption", sum.caption}, {"rows", rows}});
}

Value item(const TableItem& table) {
  Value columns = Value::list(), rows = Value::list();
  for (const TableItem::Column& column : table.columns) columns.add(Value::object({{"label", column.label}, {"figures", column.figures}}));
  for (const std::vector<std::string>& row : table.rows) {
    Value cells = Value::list();
    for (const std::string& cell : row) cells.add(cell);
    rows.add(cells);
  }
  Value presses = Value::list();
  for (const Press& press : table.row_presses) presses.add(press_value(press));
  Value pictures = Value::list();
  for (const std::string& picture : table.row_pictures) pictures.add(picture);
  return Value::object({{"kind", "table"}, {"name", table.name}, {"caption", table.caption}, {"columns", columns}, {"rows", rows}, {"row_presses", presses}, {"row_pictures", pictures}, {"when_empty", table.when_empty}});
}

Value item(const CautionItem& caution) { return Value::object({{"kind", "caution"}, {"text", caution.text}, {"advice", caution.advice}}); }

Value item(const FigureItem& figure) {
  Value wheel;
  if (figure.wheel)
    wheel = Value::object({{"value", figure.wheel->value}, {"most", figure.wheel->most}, {"text", figure.wheel->text}, {"step", figure.wheel->step},
                           {"pitch", figure.wheel->pitch}, {"argument", figure.wheel->argument}, {"on_turn", press_value(figure.wheel->on_turn)}});
  return Value::object({{"kind", "figure"}, {"name", figure.name}, {"text", figure.text}, {"svg", figure.svg}, {"wheel", wheel}});
}

}  // namespace

Value to_value(const Panel& panel) {
  constexpr const char* k_places[] = {"tray", "slip", "margin", "outline", "whole", "page"};
  Value items = Value::list();
  for (const PanelItem& each : panel.items) items.add(std::visit([](const auto& held) { return item(held); }, each));
  return Value::object({{"name", panel.name}, {"label", panel.label}, {"place", k_places[static_cast<int>(panel.place)]}, {"beside_from", panel.beside_from ? Value(static_cast<double>(*panel.beside_from)) : Value()}, {"paper", panel.paper ? Value::object({{"width_mm", panel.paper->width_mm}, {"height_mm", panel.paper->height_mm}}) : Value()}, {"deaf", panel.deaf},
                        {"in_focus", panel.in_focus}, {"on_leave", press_value(panel.on_leave)}, {"items", items}});
}

}  // namespace fogsheet
