#include "shell/panels/panels.h"

namespace fogsheet {

std::vector<Panel> panels_in_view(const Session& session, const Tool& tool) {
  std::vector<Panel> panels{outline_panel(session), tray_panel(session)};
  switch (session.slip) {
    case SlipId::none: break;
    case SlipId::first_run: panels.push_back(first_run_slip(session)); break;
    case SlipId::straight_edge: panels.push_back(straight_edge_slip(session, tool)); break;
    case SlipId::mark: panels.push_back(mark_slip(session)); break;
    case SlipId::leg: panels.push_back(leg_slip(session)); break;
    case SlipId::more: panels.push_back(more_slip(session)); break;
    case SlipId::lists: panels.push_back(lists_panel(session, PanelPlace::slip)); break;
    case SlipId::dividers: panels.push_back(dividers_slip(session, tool)); break;
    case SlipId::rose: panels.push_back(rose_slip(session, tool)); break;
    case SlipId::note: panels.push_back(note_slip(session)); break;
    case SlipId::rough_method: panels.push_back(rough_method_slip(session)); break;
    case SlipId::new_mark: panels.push_back(new_mark_slip(session)); break;
    case SlipId::sheet: panels.push_back(sheet_slip(session)); break;
    case SlipId::settings: panels.push_back(settings_slip(session)); break;
    case SlipId::legend: panels.push_back(legend_slip(session)); break;
    case SlipId::drawer: panels.push_back(drawer_slip(session)); break;
    case SlipId::history: panels.push_back(history_slip(session)); break;
    case SlipId::keys: panels.push_back(keys_slip(session)); break;
    case SlipId::compass: panels.push_back(compass_slip(session)); break;
    case SlipId::log_entry: panels.push_back(log_entry_slip(session)); break;
    case SlipId::next_leg: panels.push_back(next_leg_slip(session)); break;
    case SlipId::deck_log: panels.push_back(deck_log_slip(session)); break;
    case SlipId::stream: panels.push_back(stream_slip(session)); break;
    case SlipId::passage: panels.push_back(passage_slip(session)); break;
    case SlipId::passage_details: panels.push_back(passage_details_slip(session)); break;
    case SlipId::passage_leg: panels.push_back(passage_leg_slip(session)); break;
    case SlipId::print: panels.push_back(print_slip(session)); break;
    case SlipId::own_position: panels.push_back(own_position_slip(session)); break;
    case SlipId::file: panels.push_back(file_slip(session)); break;
    case SlipId::send: panels.push_back(send_slip(session)); break;
    case SlipId::code: panels.push_back(code_slip(session)); break;
    case SlipId::link: panels.push_back(link_slip(session)); break;
    case SlipId::photograph: panels.push_back(photograph_slip(session)); break;
    case SlipId::new_sheet: panels.push_back(new_sheet_slip(session)); break;
  }
  if (session.slip_entered && panels.back().place == PanelPlace::slip) panels.back().in_focus = panels.back().name;
  panels.push_back(margin_panel(session, tool));
  if (session.touch_locked) {
    for (Panel& panel : panels) panel.deaf = true;
    panels.push_back(touch_lock_panel());
  }
  if (session.slip == SlipId::log_entry)
    if (const std::optional<Panel> page = printed_card(session)) panels.push_back(*page);
  if (session.slip == SlipId::passage && session.printing && session.passage()) panels.push_back(passage_page(session));
  if (session.slip == SlipId::print && session.printing) panels.push_back(print_pages(session));
  if (session.canvas_lost) panels.push_back(lists_panel(session, PanelPlace::whole));
  return panels;
}

}  // namespace fogsheet
