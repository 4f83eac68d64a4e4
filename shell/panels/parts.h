// Items that several panels share.
#pragma once

#include "shell/panels/panel.h"
#include "shell/session.h"

namespace fogsheet::parts {

ButtonItem close_button();

/// The tool's status as a line: what to do next.
LineItem status_line(std::string text);

/// The variation in use, where it comes from, the other one where both are to be seen, and its cautions.
void add_variation(Panel& panel, const Session& session);

/// Cautions about the variation in use, if any.
void add_variation_caution(Panel& panel, const VariationInUse& variation);

/// What every sheet's user is told before relying on it.
void add_standing_cautions(Panel& panel);

}  // namespace fogsheet::parts
