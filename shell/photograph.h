// The user's own photograph or scan of a chart, dimmed under the sheet: what it is, the points of it that are known, and how
// it is shown. It lies beside the sheet's document, like the desk: never in its past, in a link or a print, and in no file but the one of all
// that is kept.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/sheet/picture_fit.h"
#include "shell/kept_key.h"
#include "shell/pointer.h"

namespace fogsheet {

struct Session;

struct PhotographPoint {
  PicturePoint at;
  std::optional<GridPosition> position;  // none while only its place on the photograph is given

  bool operator==(const PhotographPoint&) const = default;
};

inline constexpr std::uint64_t k_most_photograph_bytes = 64'000'000;  // of its file: as its reader has it
inline constexpr int k_photograph_strengths = 4;

/// What is kept of it beside its bytes.
struct PhotographPlacing {
  int width_px = 0;  // upright
  int height_px = 0;
  std::vector<PhotographPoint> points;
  bool stretched = true;  // by an affine fit, as soon as three points are known
  bool is_wgs84 = false;  // the chart's datum; not so: another one, or nobody knows
  bool hidden = false;
  int strength = 1;       // of the steps it can be dimmed by; 0 is the faintest

  bool operator==(const PhotographPlacing&) const = default;
};

/// One in the file of all that is kept (keeper/backup.h): its own file's bytes, as they were chosen.
struct PhotographInFile {
  SheetKey sheet;  // under which it lies
  std::string name;
  std::vector<std::uint8_t> placing;  // to_bytes(PhotographPlacing)
  std::uint64_t bytes = 0;
  std::uint32_t checksum = 0;  // crc32 of them
  std::uint64_t at = 0;        // where they begin in a file that was read

  bool operator==(const PhotographInFile&) const = default;
};

/// How it went with one that was to come out of such a file; counted in web/page/underlay_store.js. here: another one lies there.
enum class PhotographTaken { kept, here, full, not_kept, damaged };
inline constexpr std::size_t k_photograph_outcomes = 5;

/// Those on their way between the device and such a file.
struct PhotographsUnderWay {
  std::vector<PhotographInFile> going;   // that the page tells of, for the file that is being made
  std::vector<PhotographInFile> coming;  // each goes to the page once its sheet is kept
  std::size_t asked_for = 0;             // of the page, and not answered
  std::array<std::size_t, k_photograph_outcomes> taken = {};  // how many went how, of those that came

  std::size_t count(PhotographTaken how) const { return taken[static_cast<std::size_t>(how)]; }
  void add(PhotographTaken how, std::size_t more = 1) { taken[static_cast<std::size_t>(how)] += more; }
  bool is_any_amiss() const { return count(PhotographTaken::full) + count(PhotographTaken::not_kept) + count(PhotographTaken::damaged) > 0; }
  bool are_here() const { return coming.empty() && asked_for == 0; }
};

/// How it stands with what lies on the device.
enum class PhotographKept { not_yet, kept, full, failed };

struct Photograph {
  enum class State { reading, ready, refused };
  State state = State::reading;
  std::optional<Problem> problem;  // why it was refused
  std::string name;                // of its file
  PhotographPlacing placing;
  int shrunk = 1;                  // drawn pixels are the mean of a square of so many, on a side
  PhotographKept kept = PhotographKept::not_yet;
  std::optional<std::size_t> selected;  // the point whose fields are shown

  bool is_ready() const { return state == State::ready; }
};

/// What the page does with it (Platform::photograph), and what it says of it (App::photograph_news). Counted in web/page/underlay.js.
enum class PhotographAct { choose, stop, bring, keep, remove, keep_only };
enum class PhotographNews { chosen, brought, read, refused, drawn, kept, full, not_kept };

/// Where it lies on the sheet in hand.
struct LaidPhotograph {
  PictureTransform transform;
  std::optional<PictureFit> fit;     // none until it is placed: then it lies across the whole sheet
  PictureFitKind kind = PictureFitKind::similarity;
  std::vector<std::size_t> known;    // the points that it was to be placed by, in the fit's order
  std::optional<Problem> problem;    // why they don't place it
};
LaidPhotograph laid(const Session& session, const Photograph& photograph);

/// Whether it is to be drawn, and how much of it shows, in (0, 1]: by its own step, the palette and the dimmer.
bool is_shown(const std::optional<Photograph>& photograph);
double opacity_of(const Session& session, const Photograph& photograph);

/// The point within reach of the hand, nearest first.
std::optional<std::size_t> photograph_point_near(const Session& session, ScreenPoint at);

/// Adds a point and selects it. Faults: no_photograph, picture_point_outside, table_full.
Result<Done> add_photograph_point(Session& session, PicturePoint at, std::optional<GridPosition> position = {});
Result<Done> move_photograph_point(Session& session, std::size_t point, PicturePoint to);

std::vector<std::uint8_t> to_bytes(const PhotographPlacing& placing);
/// None where they are not such, or of a later format.
std::optional<PhotographPlacing> placing_from(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
