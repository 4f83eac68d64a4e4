#include "core/figure/passage_plot.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/passage/reckoning.h"

namespace fogsheet {
namespace {

constexpr int k_times_min[] = {5, 10, 15, 20, 30, 60, 120, 180, 240};  // that a triangle may be laid off for
constexpr std::size_t k_half_an_hour = 4;                              // among them
constexpr double k_least_stream_mm = 6;  // shorter, its direction can't be laid off well
constexpr double k_least_bow_mm = 0.3;   // less is within the line's own weight
constexpr double k_same_minute_s = 30;

/// Places along a leg: flat from its start, as its run was added up.
struct LegOnPaper {
  const Projection& projection;
  Position start, end;
  PlaneVector ahead;

  LegOnPaper(const Document& document, const PlannedLeg& leg, const Projection& the_projection)
      : projection(the_projection), start(place_of(document, leg.from)), end(place_of(document, leg.to)), ahead(along(leg.rhumb.course)) {}

  SheetPoint first() const { return projection.to_sheet(start); }
  SheetPoint at(PlaneVector from_start_nm) const {
    const Result<Position> position = rhumb_direct(start, direction_of(from_start_nm), length_of(from_start_nm));
    return position ? projection.to_sheet(*position) : first();
  }
  SheetPoint at(double along_nm, double across_nm) const { return at(along_nm * ahead + across_nm * PlaneVector{-ahead.east, ahead.north}); }
  double mm_per_nm() const { return projection.mm_per_nm(start.lat_deg); }
};

bool has_run(const PlannedLeg& leg) { return !leg.problem && leg.speed_kn > 0 && !leg.run.pieces.empty(); }

class Plotter {
 public:
  Plotter(const Document& document, const Passage& passage, const Projection& projection) : document_(document), passage_(passage), projection_(projection) {}

  PlottedPassage plotted(const PassagePlan& plan, const PassagePlan& under_way) {
    for (const PlannedLeg& leg : plan.legs)
      if (passage_.legs[leg.place].triangle) add_triangles(leg);
    reckoned_.resize(under_way.legs.size());
    if (has_times(under_way)) {
      add_logged(under_way);
      add_regular(under_way);
    }
    for (const PlannedLeg& leg : under_way.legs) {
      if (!has_run(leg)) continue;
      const LegOnPaper paper(document_, leg, projection_);
      add_bow(leg, paper);
      if (leg.stream != StreamEntry::not_entered && !reckoned_[leg.place].empty()) add_tracks(leg, paper);
    }
    return std::move(plot_);
  }

 private:
  /// Legs before the first that has no end; once she departed even where a later one has none.
  bool has_times(const PassagePlan& plan) const { return under_way(passage_).departed || (plan.has_times && !plan.problem); }

  void add_triangles(const PlannedLeg& leg) {
    const std::vector<LaidTriangle> laid = triangles_of(document_, leg, projection_);
    if (laid.empty() || plot_.triangles.size() + laid.size() > k_most_plotted_triangles) return;
    plot_.triangles.insert(plot_.triangles.end(), laid.begin(), laid.end());
    plot_.told_apart.push_back(passage_.legs[leg.place].leg);
  }

  void add_bow(const PlannedLeg& leg, const LegOnPaper& paper) {
    is_bowed_ = leg.way == Way::one_heading && std::any_of(leg.run.pieces.begin(), leg.run.pieces.end(), [&](const RunPiece& piece) {
      return std::abs(piece.across_nm) * paper.mm_per_nm() > k_least_bow_mm;
    });
    if (!is_bowed_) return;
    std::vector<SheetPoint> points = {paper.first()};
    for (const RunPiece& piece : leg.run.pieces) points.push_back(paper.at(piece.along_nm, piece.across_nm));
    plot_.bows.push_back(std::move(points));
  }

  // -- positions

  void add_logged(const PassagePlan& plan) {
    std::size_t leg = 0;
    bool departed = false;
    std::optional<double> log_nm;  // at the leg's start
    for (const DeckEntry& entry : passage_.deck_log) {
      if (entry.kind != DeckEntryKind::reading) {
        leg = entry.kind == DeckEntryKind::departed ? 0 : leg + 1;
        departed = departed || entry.kind == DeckEntryKind::departed;
        log_nm = entry.log_nm;
      } else if (departed && leg < plan.legs.size() && has_run(plan.legs[leg])) {
        add_reading(plan.legs[leg], entry, log_nm);
      }
    }
  }

  void add_reading(const PlannedLeg& leg, const DeckEntry& entry, std::optional<double> log_nm) {
    const Position start = place_of(document_, leg.from);
    const double at_s = static_cast<double>(instant_of(passage_, entry).seconds);
    if (entry.log_nm && log_nm) {
      // A log that runs backwards was set anew: the clock alone is left then.
      const Result<Reckoned> by_log = reckoned_by_log(start, leg.plan, leg.run, at_s, *entry.log_nm - *log_nm);
      if (by_log) return add_reckoned(leg, *by_log);
    }
    const Result<Reckoned> by_time = reckoned_at(start, leg.plan, leg.run, at_s);
    if (by_time) add_reckoned(leg, *by_time);
  }

  void add_regular(const PassagePlan& plan) {
    if (passage_.plot_every_min == 0) return;
    for (const PlannedLeg& leg : plan.legs) {
      if (!has_run(leg) || full()) return;
      const Position start = place_of(document_, leg.from);
      const Result<std::vector<Reckoned>> every = reckoned_every(start, leg.plan, leg.run, static_cast<int>(passage_.plot_every_min), passage_.zone);
      if (!every) return;
      const std::vector<Reckoned> logged = reckoned_[leg.place];
      for (const Reckoned& each : *every) {
        const auto same = [&](const Reckoned& other) { return std::abs(other.at_s - each.at_s) < k_same_minute_s; };
        if (std::none_of(logged.begin(), logged.end(), same)) add_reckoned(leg, each);
      }
    }
  }

  bool full() const { return plot_.positions.size() + 2 > k_most_plotted_positions; }

  void add_reckoned(const PlannedLeg& leg, const Reckoned& reckoned) {
    if (full()) return;
    reckoned_[leg.place].push_back(reckoned);
    const RunPiece* held = &leg.run.pieces.front();
    for (const RunPiece& piece : leg.run.pieces)
      if (piece.from_s < reckoned.at_s) held = &piece;
    const double track_deg = (leg.way == Way::one_heading ? leg.run.water_track : held->water_track).deg();
    const std::string time = clock_figures(nearest_instant(reckoned.at_s), passage_.zone, passage_.date).figures;
    plot_.positions.push_back({.sign = PlotSign::dead_reckoning, .at = projection_.to_sheet(reckoned.dead_reckoning), .track_deg = track_deg, .time = time});
    // What the stream did before then must be known.
    if (leg.stream == StreamEntry::not_entered || (leg.run.gap && reckoned.at_s > leg.run.gap->from_s)) return;
    plot_.positions.push_back({.sign = PlotSign::estimated_position, .at = projection_.to_sheet(reckoned.estimated), .track_deg = track_deg, .time = time});
  }

  // -- tracks that are told apart

  void add_tracks(const PlannedLeg& leg, const LegOnPaper& paper) {
    const LegId drawn = passage_.legs[leg.place].leg;
    const bool has_triangle = std::find(plot_.told_apart.begin(), plot_.told_apart.end(), drawn) != plot_.told_apart.end();
    if (!has_triangle) plot_.told_apart.push_back(drawn);
    if (is_bowed_) {
      const std::vector<SheetPoint>& bow = plot_.bows.back();
      const std::size_t middle = bow.size() / 2;
      plot_.ground_tracks.push_back({bow[middle - 1], bow[middle]});
    } else if (!has_triangle) {
      plot_.ground_tracks.push_back({paper.first(), projection_.to_sheet(paper.end)});
    }
    add_water_track(leg, paper, reckoned_[leg.place]);
  }

  /// Through all that is plotted on it, and hour by hour through where its direction changes.
  void add_water_track(const PlannedLeg& leg, const LegOnPaper& paper, std::vector<Reckoned> reckoned) {
    const auto earlier = [](const Reckoned& a, const Reckoned& b) { return a.at_s < b.at_s; };
    const double last_s = std::max_element(reckoned.begin(), reckoned.end(), earlier)->at_s;
    if (leg.way == Way::hour_by_hour)
      for (const RunPiece& piece : leg.run.pieces)
        if (piece.to_s < last_s)
          if (const Result<Reckoned> turn = reckoned_at(paper.start, leg.plan, leg.run, piece.to_s)) reckoned.push_back(*turn);
    std::sort(reckoned.begin(), reckoned.end(), earlier);
    std::vector<SheetPoint> points = {paper.first()};
    for (const Reckoned& each : reckoned) points.push_back(projection_.to_sheet(each.dead_reckoning));
    plot_.water_tracks.push_back(std::move(points));
  }

  const Document& document_;
  const Passage& passage_;
  const Projection& projection_;
  PlottedPassage plot_;
  std::vector<std::vector<Reckoned>> reckoned_;  // of each leg, that are plotted
  bool is_bowed_ = false;                        // the leg in hand
};

}  // namespace

std::vector<LaidTriangle> triangles_of(const Document& document, const PlannedLeg& leg, const Projection& projection) {
  std::vector<LaidTriangle> all;
  if (!has_run(leg) || leg.stream == StreamEntry::not_entered) return all;
  const LegOnPaper paper(document, leg, projection);
  const bool by_piece = leg.courses.size() > 1;
  double from_nm = 0;
  for (std::size_t i = 0; i < leg.courses.size(); ++i) {
    const double to_nm = by_piece ? leg.run.pieces[i].along_nm : leg.rhumb.distance_nm, begin_nm = from_nm;
    from_nm = to_nm;
    LaidTriangle laid{.stream = leg.courses[i].stream, .water_track = by_piece ? leg.run.pieces[i].water_track : leg.run.water_track, .speed_kn = leg.speed_kn};
    if (laid.stream.drift_kn == 0) continue;
    const ChainRow* shown = row_of(leg.courses[i].chain, ChainTerm::water_track);
    laid.shown_water_track_deg = shown ? shown->shown_deg : laid.water_track.deg();
    const double hours = by_piece ? (leg.run.pieces[i].to_s - leg.run.pieces[i].from_s) / k_seconds_per_hour : leg.run.hours;
    laid.speed_over_ground_kn = (to_nm - begin_nm) / hours;
    std::size_t time = k_half_an_hour;
    const auto fits = [&](std::size_t which) { return k_times_min[which] <= hours * 60; };
    while (time > 0 && !fits(time)) --time;
    while (time + 1 < std::size(k_times_min) && fits(time + 1) && laid.stream.drift_kn * k_times_min[time] / 60 * paper.mm_per_nm() < k_least_stream_mm) ++time;
    laid.minutes = k_times_min[time];
    const double laid_h = laid.minutes / 60.0;
    laid.start = paper.at(begin_nm, 0);
    laid.stream_end = paper.at(begin_nm * along(leg.rhumb.course) + laid_h * velocity_kn(laid.stream));
    laid.meets = paper.at(begin_nm + laid_h * laid.speed_over_ground_kn, 0);
    all.push_back(laid);
  }
  return all;
}

PlottedPassage plot_passage(const Document& document, const Passage& passage, const PassagePlan& plan, const PassagePlan& under_way, const Projection& projection) {
  return Plotter(document, passage, projection).plotted(plan, under_way);
}

}  // namespace fogsheet
