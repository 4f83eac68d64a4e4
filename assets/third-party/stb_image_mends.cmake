# stb_image 2.27, as Debian has it, trusts a JPEG's tables and the length of its data more than it may: found by
# tests/fuzz/image_fuzz.cpp, and mended by its maker in 2.28 to 2.30. The header that is built from is a mended copy. A later
# one, which lacks the places as they were, is taken as it is.
function(fogsheet_mend was is)
  string(REPLACE "${was}" "${is}" text "${text}")
  set(text "${text}" PARENT_SCOPE)
endfunction()

function(fogsheet_mended_stb_image from to)
  file(READ "${from}" text)
  # More symbols than a table has room for.
  fogsheet_mend([=[            L -= 17;
            if (tc == 0) {]=] [=[            L -= 17;
            if (n > 256) return stbi__err("bad DHT header","Corrupt JPEG");
            if (tc == 0) {]=])
  # A symbol that is not in the table.
  fogsheet_mend([=[& stbi__bmask[k]) + h->delta[k];
   STBI_ASSERT]=] [=[& stbi__bmask[k]) + h->delta[k];
   if (c < 0 || c >= 256) return -1;
   STBI_ASSERT]=])
  # Tables that the file never gives are empty, not whatever the memory held.
  fogsheet_mend([=[   STBI_NOTUSED(ri);
   j->s = s;]=] [=[   STBI_NOTUSED(ri);
   memset(j, 0, sizeof(stbi__jpeg));
   j->s = s;]=])
  # Data that end early.
  foreach(count n 1)
    fogsheet_mend("   if (j->code_bits < ${count}) stbi__grow_buffer_unsafe(j);
" "   if (j->code_bits < ${count}) stbi__grow_buffer_unsafe(j);
   if (j->code_bits < ${count}) return 0;
")
  endforeach()
  set(before "")
  if(EXISTS "${to}")
    file(READ "${to}" before)
  endif()
  if(NOT before STREQUAL text)
    file(WRITE "${to}" "${text}")
  endif()
endfunction()
