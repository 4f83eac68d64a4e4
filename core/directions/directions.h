// True, magnetic and compass directions are three types; variation and deviation are the only roads between them.
// All are degrees clockwise from north in [0, 360); variation and deviation are east positive.
#pragma once

namespace fogsheet {

enum class Reference { true_north, magnetic, compass };

/// Reduces any finite angle to [0, 360). -0 and 360 become 0.
double reduce_direction_deg(double deg);

/// Reduces any finite difference to [-180, 180).
double reduce_difference_deg(double deg);

template <Reference reference>
class Direction {
 public:
  Direction() = default;
  explicit Direction(double deg) : deg_(reduce_direction_deg(deg)) {}
  double deg() const { return deg_; }
  Direction reciprocal() const { return Direction(deg_ + 180); }
  bool operator==(const Direction&) const = default;

 private:
  double deg_ = 0;
};

using TrueDirection = Direction<Reference::true_north>;
using MagneticDirection = Direction<Reference::magnetic>;
using CompassDirection = Direction<Reference::compass>;

/// Magnetic north seen from true north, east positive.
struct Variation {
  double deg = 0;
  bool operator==(const Variation&) const = default;
};

/// Compass north seen from magnetic north, east positive, for one heading of one boat.
struct Deviation {
  double deg = 0;
  bool operator==(const Deviation&) const = default;
};

/// magnetic = true - variation; compass = magnetic - deviation; and back.
MagneticDirection to_magnetic(TrueDirection direction, Variation variation);
TrueDirection to_true(MagneticDirection direction, Variation variation);
CompassDirection to_compass(MagneticDirection direction, Deviation deviation);
MagneticDirection to_magnetic(CompassDirection direction, Deviation deviation);

/// The variation or deviation between two readings of one direction, [-180, 180).
Variation variation_between(TrueDirection direction, MagneticDirection magnetic);
Deviation deviation_between(MagneticDirection direction, CompassDirection compass);

/// Both together: how far the compass is from true, east positive, [-180, 180).
double compass_error_deg(Variation variation, Deviation deviation);

}  // namespace fogsheet
