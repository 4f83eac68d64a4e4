#include "shell/commands_send.h"

#include <algorithm>

#include "core/formats/document_text.h"
#include "core/formats/qr_figure.h"
#include "core/positions/geo_uri.h"
#include "shell/arguments.h"
#include "shell/commands_drawer.h"
#include "shell/commands_sheet.h"
#include "shell/demo.h"
#include "shell/words.h"
#include "shell/words_of_files.h"
#include "shell/words_of_sending.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_sharing(const Session& session) { return session.platform.setting("share").empty() ? std::optional(Fault::nothing_to_share_with) : std::nullopt; }
std::optional<Fault> no_link(const Session& session) { return session.sending.arrived ? std::nullopt : std::optional(Fault::no_link_arrived); }

Value run_copy_place(Session& session, const Value& arguments) {
  const Result<MarkId> mark = mark_argument(session.document(), arguments, "id");
  if (!mark) return refused(mark.problem());
  session.sending.link_copied = false;
  session.platform.copy(print_geo_uri(session.document().marks.find(*mark)->at));
  return done();
}

Value run_copy_link(Session& session, const Value&) {
  session.sending.link_copied = true;
  session.platform.copy(link_of(session));
  return done();
}

Value run_share_link(Session& session, const Value&) {
  session.platform.share(words::sheet_title(session.document()), link_of(session), "");
  return done();
}

Value run_share_file(Session& session, const Value&) {
  const Document sent = sent_document(session);
  session.platform.share(words::sheet_title(sent), encode_document(sent) + "\n", words::file_name(sent, "fogsheet"));
  return done();
}

Value run_show_code(Session& session, const Value&) {
  const std::string link = link_of(session);
  if (link.size() > k_most_qr_bytes) return refused({.fault = Fault::code_too_long, .numbers = {static_cast<double>(link.size()), static_cast<double>(k_most_qr_bytes)}});
  // White is too much for eyes that are used to the dark: at night it begins with little.
  session.sending.code = {.link = link, .light = session.settings.palette == Palette::night ? "little" : "full"};
  session.slip = SlipId::code;
  session.platform.make_code(link);
  return done();
}

Value run_code_light(Session& session, const Value& arguments) {
  const Result<std::string> light = text_argument(arguments, "light");
  if (!light) return refused(light.problem());
  for (const CodeLight& row : k_code_lights)
    if (*light == row.name) {
      session.sending.code.light = row.name;
      return done();
    }
  return refused({.fault = Fault::entry_unreadable, .texts = {"light", *light}});
}

/// Whether there is work of the user's in hand: not the sheet to try, nor one that came by a link and was left as it came.
bool own_sheet_in_hand(const Session& session) {
  const SheetInDrawer& in_hand = session.sheets.in_hand();
  const bool as_opened = in_hand.over && in_hand.over->label.act == Act::open_sheet && in_hand.history.state() == 0 && in_hand.history.last_state() == 0;
  return !as_opened && !(session.document() == demo_sheet());
}

void open_beside(Session& session, Document document) {
  lay_down(session, std::move(document), Act::open_sheet);
  session.slip = SlipId::none;
  session.say(words::link_opened(session.document()));
}

/// As a person opens a link: a sheet that lies here just so is taken in hand, and work that is in hand is not put aside unasked.
Value run_open_link(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  Result<Document> decoded = decode_document(*text);
  if (!decoded) return refused(decoded.problem());
  const std::vector<const SheetInDrawer*> shown = session.sheets.shown();
  const auto same = std::find_if(shown.begin(), shown.end(), [&](const SheetInDrawer* sheet) { return sheet->history.now() == *decoded; });
  if (same != shown.end()) {
    if (*same != &session.sheets.in_hand()) run_command(session, "open-sheet", Value::object({{"key", key_text((*same)->key)}}));
    session.slip = SlipId::none;
    session.say(words::here_already(*decoded));
  } else if (own_sheet_in_hand(session)) {
    session.sending.arrived = std::move(decoded).value();
    session.slip = SlipId::link;
  } else {
    open_beside(session, std::move(decoded).value());
  }
  return done();
}

Value run_open_arrived(Session& session, const Value&) {
  Document document = *std::exchange(session.sending.arrived, std::nullopt);
  open_beside(session, std::move(document));
  return done();
}

Value run_put_link_away(Session& session, const Value&) {
  session.sending.arrived.reset();
  if (session.slip == SlipId::link) session.slip = SlipId::none;
  return done();
}

}  // namespace

Document sent_document(const Session& session) {
  Document sent = session.document();
  if (sent.compass && !sent.compass->in_links) sent.compass.reset();
  return sent;
}

std::string link_of(const Session& session) { return session.platform.page_address() + "#" + encode_document(sent_document(session)); }

std::vector<Command> send_commands() {
  return {
      {"copy-link", "Copy the link", "", {}, nullptr, run_copy_link},
      {"copy-place", "Copy a mark's place as a geo: link", "", {{"id", "id of a mark"}}, nullptr, run_copy_place},
      {"share-link", "Send the link by this device", "", {}, no_sharing, run_share_link},
      {"share-file", "Send the file by this device", "", {}, no_sharing, run_share_file},
      {"show-code", "Show the link as a code", "", {}, nullptr, run_show_code},
      {"code-light", "Light of the code", "", {{"light", "full, less or little"}}, nullptr, run_code_light},
      {"open-link", "Open a link, asking first where there is work in hand", "", {{"text", "1:… or a link"}}, nullptr, run_open_link},
      {"open-arrived", "Open the sheet that a link brought", "", {}, no_link, run_open_arrived},
      {"put-link-away", "Leave what a link brought", "", {}, no_link, run_put_link_away},
  };
}

}  // namespace fogsheet
