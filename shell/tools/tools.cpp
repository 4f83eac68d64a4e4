#include "core/base/check.h"
#include "shell/tools/dividers_tool.h"
#include "shell/tools/leg_tool.h"
#include "shell/tools/mark_tool.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/note_tool.h"
#include "shell/tools/photograph_tool.h"
#include "shell/tools/rose_tool.h"
#include "shell/tools/straight_edge_tool.h"

namespace fogsheet {

const std::vector<ToolRow>& tool_table() {
  static const std::vector<ToolRow> table = {
      {ToolId::none, "none", "", "", [] { return std::unique_ptr<Tool>(std::make_unique<NoTool>()); }},
      {ToolId::mark, "mark", "mark", "M", [] { return std::unique_ptr<Tool>(std::make_unique<MarkTool>()); }},
      {ToolId::leg, "leg", "leg", "L", [] { return std::unique_ptr<Tool>(std::make_unique<LegTool>()); }},
      {ToolId::straight_edge, "straight-edge", "edge", "S", [] { return std::unique_ptr<Tool>(std::make_unique<StraightEdgeTool>()); }, SlipId::straight_edge},
      {ToolId::rose, "rose", "rose", "O", [] { return std::unique_ptr<Tool>(std::make_unique<RoseTool>()); }, SlipId::rose},
      {ToolId::dividers, "dividers", "dividers", "D", [] { return std::unique_ptr<Tool>(std::make_unique<DividersTool>()); }, SlipId::dividers},
      {ToolId::note, "note", "note", "N", [] { return std::unique_ptr<Tool>(std::make_unique<NoteTool>()); }},
      {ToolId::photograph, "photograph", "", "", [] { return std::unique_ptr<Tool>(std::make_unique<PhotographTool>()); }, SlipId::photograph},
  };
  return table;
}

const ToolRow& tool_row(ToolId id) {
  for (const ToolRow& row : tool_table())
    if (row.id == id) return row;
  check_failed("id", "a tool without a row in the table", __FILE__, __LINE__);
}

}  // namespace fogsheet
