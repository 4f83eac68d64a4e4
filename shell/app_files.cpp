// Files: what the page tells of one that was chosen, dropped, or opened by the system; and of what goes out.
#include "core/base/utf8.h"
#include "core/formats/document_text.h"
#include "core/formats/marks_and_lines.h"
#include "shell/app.h"
#include "shell/app_inside.h"
#include "shell/commands_backup.h"
#include "shell/commands_sheet.h"
#include "shell/words.h"
#include "shell/words_of_backup.h"
#include "shell/words_of_files.h"
#include "shell/words_of_sending.h"

namespace fogsheet {
namespace {

constexpr double k_most_backup_bytes = 128'000'000;

/// "1:..." or a link to such a text. A name alone may be wrong: what begins as a file of another program is one.
bool is_sheet(const std::string& name, std::string_view head) {
  const std::string_view text = trimmed(head);
  if (text.starts_with('<') || text.starts_with('{') || text.starts_with('[')) return false;
  const std::size_t figures = text.find_first_not_of("0123456789");
  return name.ends_with(".fogsheet") || text.starts_with("http") || (figures != std::string_view::npos && figures > 0 && figures < 4 && text[figures] == ':');
}

Problem not_done(int fault, double patience_s) { return {.fault = page_fault(fault, {Fault::file_reader_missing, Fault::file_took_too_long, Fault::file_unreadable, Fault::file_no_room}), .numbers = {patience_s}}; }

/// Where the user has gone on meanwhile, nothing is taken from under the hand.
void show_what_was_read(Session& session) {
  if (session.slip == SlipId::none) session.slip = SlipId::file;
  else if (session.slip != SlipId::file) session.say(words::file_waits(session.file->name));
  session.touch();
}

}  // namespace

FileRoad App::file_chosen(const std::string& name, double bytes, std::string_view head, int others) {
  Session& session = inside_->session;
  session.file.reset();
  if (session.slip == SlipId::file) session.slip = SlipId::none;
  if (head.starts_with("\x89PNG") || head.starts_with("\xFF\xD8\xFF")) {  // a picture: that of a chart, to lie under the sheet
    session.platform.photograph(PhotographAct::choose, session.sheets.in_hand().key.value, {});
    if (others > 0) session.say(words::others_left(others));
    session.touch();
    return FileRoad::none;
  }
  session.file = FileInHand{.name = std::string(fitting(repaired_utf8(name), k_most_name_bytes)), .bytes = bytes, .others = others};
  session.slip = SlipId::file;
  session.touch();
  const FileRoad road = is_sheet(name, head) ? FileRoad::sheet : name.ends_with(".fogsheets") || head.starts_with(k_backup_begin) ? FileRoad::all : FileRoad::exchange;
  const double most = road == FileRoad::sheet ? static_cast<double>(k_most_text_bytes) : road == FileRoad::all ? k_most_backup_bytes : static_cast<double>(k_most_file_bytes);
  const std::optional<std::uint64_t> record_bytes = road == FileRoad::all ? backup_record_bytes(head) : std::nullopt;
  session.file->bytes_wanted = record_bytes ? std::min(bytes, static_cast<double>(*record_bytes)) : bytes;
  if (session.file->bytes_wanted <= most) return road;
  session.file->read = Problem{.fault = Fault::file_too_long, .numbers = {session.file->bytes_wanted, most}};
  return FileRoad::none;
}

double App::backup_bytes_wanted() const { return inside_->session.file ? inside_->session.file->bytes_wanted : 0; }

void App::file_opened(const std::string& text) {
  Session& session = inside_->session;
  Result<Document> decoded = decode_document(text);
  if (!decoded) {
    if (!session.file) session.file = FileInHand{};
    session.file->read = decoded.problem();
    session.slip = SlipId::file;
  } else {
    const int others = session.file ? session.file->others : 0;
    session.file.reset();
    session.slip = SlipId::none;
    lay_down(session, std::move(decoded).value(), Act::open_sheet);
    if (others > 0) session.say(words::others_left(others));
  }
  session.touch();
  inside_->keep();
}

void App::backup_read(std::span<const std::uint8_t> bytes) {
  Session& session = inside_->session;
  if (!session.file) return;  // put away meanwhile
  Result<Backup> read = read_backup(bytes);
  if (read) session.file->all = std::move(read).value();
  else session.file->read = read.problem();
  session.touch();
}

void App::file_read(std::span<const std::uint8_t> bytes) {
  Session& session = inside_->session;
  if (!session.file) return;  // put away meanwhile
  session.file->read = marks_and_lines_from(bytes);
  show_what_was_read(session);
}

void App::file_not_read(int fault, double patience_s) {
  Session& session = inside_->session;
  if (!session.file) return;
  session.file->read = not_done(fault, patience_s);
  show_what_was_read(session);
}

void App::photograph_listed(PhotographInFile photograph) { inside_->session.photographs.going.push_back(std::move(photograph)); }

void App::photographs_listed(bool were_read) {
  save_everything(inside_->session, were_read);
  inside_->session.touch();
}

void App::photograph_taken(std::uint64_t sheet, PhotographTaken how) {
  Session& session = inside_->session;
  PhotographsUnderWay& under_way = session.photographs;
  if (under_way.asked_for > 0) --under_way.asked_for;
  under_way.add(how);
  if (how == PhotographTaken::kept && sheet == session.sheets.in_hand().key.value && !session.photograph) session.platform.photograph(PhotographAct::bring, sheet, {});
  if (under_way.are_here()) {
    const std::string said = words::photographs_came(under_way);
    if (under_way.is_any_amiss()) session.message = {said, true};
    else if (!said.empty()) session.say(said);
  }
  session.touch();
}

void App::code_made(std::span<const std::uint8_t> modules) {
  CodeShown& code = inside_->session.sending.code;
  code.modules.assign(modules.begin(), modules.end());
  code.failed = modules.empty();
  inside_->session.touch();
}

void App::not_shared() {
  inside_->session.message = {words::not_taken_to_share(), true};
  inside_->session.touch();
}

void App::file_not_saved(int fault, double patience_s) {
  inside_->session.refuse(not_done(fault, patience_s));
  inside_->session.touch();
}

}  // namespace fogsheet
