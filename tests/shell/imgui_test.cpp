// Dear ImGui is built as the sheet needs it.
#include "imgui.h"

#include "doctest/doctest.h"

TEST_CASE("draw lists have indices for more than 65 536 corners") {
  CHECK(sizeof(ImDrawIdx) == 4);
}

TEST_CASE("a frame is drawn with no window and no graphics") {
  ImGuiContext* context = ImGui::CreateContext();
  ImGui::GetIO().DisplaySize = ImVec2(820, 1180);
  ImGui::GetIO().IniFilename = nullptr;
  ImGui::GetIO().Fonts->Build();
  ImGui::NewFrame();
  ImGui::GetBackgroundDrawList()->AddLine(ImVec2(0, 0), ImVec2(10, 10), IM_COL32_WHITE);
  ImGui::Render();
  CHECK(ImGui::GetDrawData()->TotalVtxCount > 0);
  ImGui::DestroyContext(context);
}
