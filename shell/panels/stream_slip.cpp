// The stream's triangle asked on its own, and distance, speed and time.
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/stream_questions.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

struct FieldLook {
  std::string_view name;
  const char* label;
  const char* unit;
  Pad pad;
};

constexpr FieldLook k_looks[] = {
    {"track", "Track over the ground", "", Pad::direction}, {"heading", "Heading, after leeway", "", Pad::direction}, {"speed", "Speed through the water", "kn", Pad::quantity},
    {"set", "Stream sets towards", "°T", Pad::quantity},    {"drift", "Drift", "kn", Pad::quantity},                   {"minutes", "Time", "min", Pad::quantity},
    {"distance", "Distance", "nm", Pad::quantity},
};

void add_field(Panel& slip, const Session& session, std::string_view name) {
  const Press press{"ask-stream", Value::object({{"field", std::string(name)}})};
  if (name == "from" || name == "fix") {
    slip.items.push_back(parts::mark_choice(session.document(), "ask-" + std::string(name), name == "from" ? "From the mark" : "The fix is the mark", question_text(session, name), press));
    return;
  }
  for (const FieldLook& look : k_looks) {
    if (look.name != name) continue;
    FieldItem field{.name = "ask-" + std::string(name), .label = look.label, .text = question_text(session, name), .unit = look.unit, .pad = look.pad, .on_leave = press};
    if (look.pad == Pad::direction) field.letter = "T";
    if (const std::optional<Problem> fault = question_fault(session, name)) field.error = words::sentence(*fault);
    slip.items.push_back(std::move(field));
  }
}

void add_answer(Panel& slip, const Session& session, const std::string& question) {
  const StreamAnswer found = answer(session);
  if (found.problem) slip.items.push_back(CautionItem{.text = "No answer", .advice = words::sentence(*found.problem)});
  if (found.lines.empty() && !found.problem) slip.items.push_back(LineItem{.text = words::question_waits(question), .tone = LineTone::soft});
  for (const StreamAnswer::Line& line : found.lines) slip.items.push_back(LineItem{.text = line.text, .value = line.value, .tone = line.strong ? LineTone::strong : LineTone::body});
  if (found.chain) slip.items.push_back(words::chain_sum(*found.chain, session.settings.rounding, session.facts().variation));
  if (found.place) slip.items.push_back(ButtonItem{.name = "mark-estimated", .label = "Mark it on the sheet", .look = ButtonLook::main, .on_press = {"mark-estimated"}});
  if (found.stream && session.passage()) slip.items.push_back(ButtonItem{.name = "use-found-stream", .label = "Plan the passage with it", .look = ButtonLook::main, .on_press = {"use-found-stream"}});
}

}  // namespace

Panel stream_slip(const Session& session) {
  const std::string question = question_in_hand(session);
  Panel slip{.name = "stream", .label = words::stream_title(session.document())};
  slip.items.push_back(HeadingItem{.text = words::stream_title(session.document()), .beside = "the triangle of boat, water and ground"});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(ChoiceItem{.name = "question", .label = "Ask", .options = {{"steer", "What do I steer?"}, {"made-good", "Where does it take me?"}, {"stream", "What put me here?"}, {"run", "Distance, speed, time"}},
                                  .chosen = question, .argument = "text", .on_choose = {"ask-stream", Value::object({{"field", "which"}})}});
  for (const std::string_view field : fields_of(question)) add_field(slip, session, field);
  add_answer(slip, session, question);
  return slip;
}

}  // namespace fogsheet
