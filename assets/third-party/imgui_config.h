// Dear ImGui's configuration: only what draws, and draw lists as long as a large sheet needs.
#pragma once

#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEFAULT_SHELL_FUNCTIONS

// WebGL2 has no vertex offset in the GL backend, and 16-bit indices end near 960 marks.
#define ImDrawIdx unsigned int
