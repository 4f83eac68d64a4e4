// The desk as bytes: what lies on each sheet (instruments, camera, what is selected), the tool and the slip, and which
// sheet is in hand. Kept so that a page comes back as it was left; what no longer fits is left out.
#pragma once

#include <span>

#include "shell/keeper/store.h"
#include "shell/session.h"

namespace fogsheet {

StoreBytes desk_bytes(const Session& session);

/// Brings back what `bytes` tell; damaged ones change nothing.
void restore_desk(Session& session, std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
