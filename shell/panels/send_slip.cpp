// A sheet on its way to somebody else: what goes along, the link with its length, the file, the code. And one that came.
#include "core/formats/qr_figure.h"
#include "shell/commands.h"
#include "shell/commands_send.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_sending.h"

namespace fogsheet {
namespace {

void add_what_it_holds(Panel& slip, const Document& document) {
  for (const std::string& line : words::holds(document)) slip.items.push_back(LineItem{.text = line});
}

// Among light things a darkened code is not told from them: its light is taken away in dark palettes alone.
int light_of(const CodeShown& code, Palette palette) {
  if (!is_dark(palette)) return 100;
  for (const CodeLight& row : k_code_lights)
    if (code.light == row.name) return row.percent;
  return 100;
}

}  // namespace

Panel send_slip(const Session& session) {
  const Document sent = sent_document(session);
  const std::string link = link_of(session);
  const bool too_long = link.size() > k_most_link_characters, no_code = link.size() > k_most_qr_bytes;
  const std::string share = session.platform.setting("share");
  Panel slip{.name = "send", .label = words::send_title()};
  slip.items.push_back(HeadingItem{.text = words::send_title(), .beside = words::sheet_title(sent)});
  slip.items.push_back(parts::close_button());
  add_what_it_holds(slip, sent);
  if (const Shared<KeptCard>& card = session.document().compass)
    slip.items.push_back(ChoiceItem{.name = "card-in-links", .label = "The boat's card", .options = {{"yes", "goes along"}, {"no", "stays here"}}, .chosen = card->in_links ? "yes" : "no", .argument = "wanted", .on_choose = {"card-in-links"}});
  slip.items.push_back(LineItem{.text = "Its link", .value = words::characters(link.size()), .tone = LineTone::strong});
  if (too_long) slip.items.push_back(CautionItem{.text = words::link_too_long(), .advice = words::link_too_long_advice(k_most_link_characters)});
  if (session.sending.link_shown) slip.items.push_back(FieldItem{.name = "link", .label = "The link, to copy by hand", .text = link, .multiline = true});
  slip.items.push_back(LineItem{.text = words::where_it_goes(), .tone = LineTone::soft});

  slip.items.push_back(ButtonItem{.name = "copy-link", .label = "Copy the link", .look = too_long ? ButtonLook::plain : ButtonLook::main, .on_press = {"copy-link"}});
  slip.items.push_back(ButtonItem{.name = "show-code", .label = words::code_title(), .enabled = !no_code, .reason = words::code_too_long(k_most_qr_bytes), .on_press = {"show-code"}});
  if (!share.empty()) slip.items.push_back(ButtonItem{.name = "share-link", .label = "Send the link", .on_press = {"share-link"}});
  if (share == "files") slip.items.push_back(ButtonItem{.name = "share-file", .label = "Send the file", .look = too_long ? ButtonLook::main : ButtonLook::plain, .on_press = {"share-file"}});
  slip.items.push_back(ButtonItem{.name = "save-sheet", .label = "Save as a file", .look = too_long && share != "files" ? ButtonLook::main : ButtonLook::plain, .on_press = {"save-sheet"}});
  return slip;
}

Panel code_slip(const Session& session) {
  const CodeShown& code = session.sending.code;
  Panel slip{.name = "code", .label = "The sheet as a code"};
  slip.items.push_back(HeadingItem{.text = words::sheet_title(session.document())});
  slip.items.push_back(parts::close_button());
  if (code.link != link_of(session)) {
    if (!code.link.empty()) slip.items.push_back(LineItem{.text = words::code_is_old()});  // after a reload there is none yet
    slip.items.push_back(ButtonItem{.name = "show-code", .label = "Make it anew", .look = ButtonLook::main, .on_press = {"show-code"}});
    return slip;
  }
  if (code.failed) slip.items.push_back(CautionItem{.text = words::sentence({.fault = Fault::file_reader_missing})});
  else if (code.modules.empty()) slip.items.push_back(LineItem{.text = words::code_is_made()});
  else slip.items.push_back(FigureItem{.name = "code", .text = words::code_says(code.link.size()), .svg = qr_svg(code.modules, light_of(code, session.settings.palette))});
  const bool dark = is_dark(session.settings.palette);
  if (dark) slip.items.push_back(ChoiceItem{.name = "code-light", .label = "Its light", .options = {{"full", "full"}, {"less", "less"}, {"little", "little"}}, .chosen = code.light, .argument = "light", .on_choose = {"code-light"}});
  slip.items.push_back(LineItem{.text = dark ? words::code_glares() : words::how_to_read_code(), .tone = LineTone::soft});
  return slip;
}

Panel link_slip(const Session& session) {
  const Document& arrived = *session.sending.arrived;
  Panel slip{.name = "link", .label = "What the link holds"};
  slip.items.push_back(HeadingItem{.text = words::sheet_title(arrived)});
  slip.items.push_back(parts::close_button());
  add_what_it_holds(slip, arrived);
  slip.items.push_back(LineItem{.text = words::link_arrived(), .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "open-arrived", .label = "Open it beside", .look = ButtonLook::main, .on_press = {"open-arrived"}});
  slip.items.push_back(ButtonItem{.name = "put-link-away", .label = "Not now", .on_press = {"put-link-away"}});
  return slip;
}

}  // namespace fogsheet
