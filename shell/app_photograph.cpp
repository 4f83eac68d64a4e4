// The photograph under the sheet: what the page tells of it.
#include <algorithm>

#include "core/base/utf8.h"
#include "shell/app.h"
#include "shell/app_inside.h"

namespace fogsheet {
namespace {

/// One of ours, or what the page itself met with.
Fault fault_of(double code) {
  if (code >= 0 && code <= static_cast<double>(k_last_fault)) return static_cast<Fault>(code);
  return page_fault(code, {Fault::photograph_reader_missing, Fault::picture_took_too_long, Fault::file_unreadable, Fault::picture_broken});
}

}  // namespace

bool App::photograph_news(PhotographNews news, std::uint64_t sheet, const std::string& text, std::span<const std::uint8_t> bytes, const PhotographNumbers& numbers) {
  Session& session = inside_->session;
  if (sheet != session.sheets.in_hand().key.value) return false;  // of one that has been put away meanwhile
  inside_->drop_gesture();
  session.touch();
  std::optional<Photograph>& photograph = session.photograph;
  const bool begins = news == PhotographNews::chosen || news == PhotographNews::brought;
  if (!begins && !photograph) return false;  // it was stopped, or taken away
  const auto refuse = [&](Problem problem) {
    photograph->state = Photograph::State::refused;
    photograph->problem = std::move(problem);
    return false;
  };
  switch (news) {
    case PhotographNews::chosen:
      photograph = Photograph{.name = std::string(fitting(repaired_utf8(text), k_most_name_bytes))};
      session.placing_told.clear();
      session.slip = SlipId::photograph;
      if (constexpr double most = k_most_photograph_bytes; numbers.a > most) return refuse({.fault = Fault::file_too_long, .numbers = {numbers.a, most}});
      break;
    case PhotographNews::brought:
      photograph = Photograph{.name = text, .placing = placing_from(bytes).value_or(PhotographPlacing{}), .kept = PhotographKept::kept};
      session.placing_told.assign(bytes.begin(), bytes.end());
      break;
    case PhotographNews::read: {
      const int width_px = static_cast<int>(numbers.a), height_px = static_cast<int>(numbers.b);
      PhotographPlacing& placing = photograph->placing;
      if (placing.width_px != width_px || placing.height_px != height_px) {
        placing = {.width_px = width_px, .height_px = height_px};
        if (session.slip == SlipId::photograph) session.desk.tool = ToolId::photograph;
      }
      photograph->shrunk = std::max(1, static_cast<int>(numbers.code));
      photograph->state = Photograph::State::ready;
      break;
    }
    case PhotographNews::refused: {
      Problem problem{.fault = fault_of(numbers.code), .numbers = {numbers.a, numbers.b}};
      if (!text.empty()) problem.texts.push_back(text);
      refuse(std::move(problem));
      break;
    }
    case PhotographNews::drawn: break;
    case PhotographNews::kept: photograph->kept = PhotographKept::kept; break;
    case PhotographNews::full: photograph->kept = PhotographKept::full; break;
    case PhotographNews::not_kept: photograph->kept = PhotographKept::failed; break;
  }
  inside_->keep();
  return true;
}

}  // namespace fogsheet
