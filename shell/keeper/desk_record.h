// The desk as bytes: what lies on each sheet (instruments, camera, what is selected), the tool and the slip, which sheet is
// in hand, and what was typed and is not yet on a sheet. Kept so that a page comes back as it was left; what no longer fits is left out.
#pragma once

#include <span>

#include "shell/keeper/store.h"
#include "shell/session.h"

namespace fogsheet {

StoreBytes desk_bytes(const Session& session);

/// Brings back what `bytes` tell; damaged ones change nothing.
/// @param is_kept  whether the sheet in hand then is among those kept: the sheet to try is not while nobody has drawn on it;
///                 of its desk only what was typed comes back.
void restore_desk(Session& session, std::span<const std::uint8_t> bytes, bool is_kept);

}  // namespace fogsheet
