// The device's own position beside the sheet in hand.
#pragma once

#include <optional>
#include <string>

#include "shell/canvas/overlay.h"
#include "shell/session.h"

namespace fogsheet {

/// Whether the device goes on telling.
bool is_listened_for(OwnPositionState state);

/// Its place on the paper; empty when there is none, or off the neat line.
std::optional<SheetPoint> own_position_on_sheet(const Session& session);

/// By the device's own clock: "1432".
std::string time_found(const Session& session);

/// A lozenge, about it the circle that it lies in 19 times in 20, beside it the time.
void draw_own_position(const Session& session, Overlay& overlay);

}  // namespace fogsheet
