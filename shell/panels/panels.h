// The panels in view, in the order in which they are read: outline, tray, slip, margin. Each is a pure function of the session.
#pragma once

#include "core/compass/card_place.h"
#include "shell/panels/panel.h"
#include "shell/session.h"
#include "shell/tools/tool.h"

namespace fogsheet {

Panel tray_panel(const Session& session);
Panel first_run_slip(const Session& session);
Panel straight_edge_slip(const Session& session, const Tool& tool);
Panel dividers_slip(const Session& session, const Tool& tool);
Panel rough_method_slip(const Session& session);
Panel rose_slip(const Session& session, const Tool& tool);
Panel note_slip(const Session& session);
Panel mark_slip(const Session& session);
Panel leg_slip(const Session& session);
Panel more_slip(const Session& session);
/// Marks and legs as tables: also what stands in place of a canvas that can't be drawn on.
Panel lists_panel(const Session& session, PanelPlace place);
Panel new_sheet_slip(const Session& session);
Panel drawer_slip(const Session& session);
Panel history_slip(const Session& session);
/// Of the file in hand, which there is.
Panel file_slip(const Session& session);
/// Its part where that file is all that was kept; which it is.
void add_backup(Panel& slip, const Session& session);
/// The sheet in hand on its way to somebody else: its link, file and code; the code itself; and a link that came, which there is.
Panel send_slip(const Session& session);
Panel code_slip(const Session& session);
Panel link_slip(const Session& session);
Panel photograph_slip(const Session& session);
Panel new_mark_slip(const Session& session);
Panel sheet_slip(const Session& session);
/// The passage card as it is read on the screen; without a passage, how to make one.
Panel passage_slip(const Session& session);
/// What the passage is planned with: speed, times, leeway, stream.
Panel passage_details_slip(const Session& session);
/// One leg of it; which there is.
Panel passage_leg_slip(const Session& session);
/// The passage card as it goes on paper; which passage there is.
Panel passage_page(const Session& session);
Panel stream_slip(const Session& session);
/// Under way: one course to hold; and what was written on the way.
Panel next_leg_slip(const Session& session);
Panel deck_log_slip(const Session& session);
Panel compass_slip(const Session& session);
/// The entry of the compass's log that is in hand; which there is.
Panel log_entry_slip(const Session& session);
/// The card of that entry as it goes on paper; empty when it gives none.
std::optional<Panel> printed_card(const Session& session);
Panel legend_slip(const Session& session);
Panel settings_slip(const Session& session);
/// The choice of palette, and the dimmer where there is one.
void add_palette(Panel& slip, const Session& session);
/// The one bar that still listens while touch is locked.
Panel touch_lock_panel();
/// How the sheet is printed; print_pages() is what is (shell/printing.h).
Panel print_slip(const Session& session);
/// Where the device says it is.
Panel own_position_slip(const Session& session);
Panel keys_slip(const Session& session);
/// How the field at the sheet's middle differs from where its card was made; empty without both.
std::optional<CardAway> card_away_here(const Session& session);
/// What is on the sheet, or while it is shut the button that opens it.
Panel outline_panel(const Session& session);
Panel margin_panel(const Session& session, const Tool& tool);

std::vector<Panel> panels_in_view(const Session& session, const Tool& tool);

}  // namespace fogsheet
