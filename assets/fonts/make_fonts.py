"""Cuts B612 down to the characters the product writes, and measures them for core; lists the characters that take no width.

    make_fonts.py SOURCE_DIR FONTS_DIR HEADER

Writes FONTS_DIR/B612-{Regular,Bold,Italic}.otf, which the page is served and the canvas reads, and HEADER, the advance
widths of the same characters, so that core places labels alike on screen, in print and in exports, and which characters
of other scripts stand on the one before them. The same source files and the same Python give the same bytes every time.
"""

import os
import sys
import unicodedata

from fontTools import subset
from fontTools.ttLib import TTFont

FACES = ["Regular", "Bold", "Italic"]

# Latin to U+017F, letters for names in the languages of most small harbours; then the signs of the sheet and its panels.
CHARACTERS = [*range(0x20, 0x7F), *range(0xA0, 0x180)] + [ord(c) for c in "\u02bc°′″±−×÷·–—…←→↑↓↔½Δ≈≤≥✓’‘“”"]


# What stands on, joins or directs the characters around it: marks that take no room and format characters by Unicode's
# general category (Unicode Standard, chapter 4.5), the vowels and final consonants that end a Hangul syllable (chapter
# 18.6), the skin tones of emoji (Unicode Technical Standard 51, section 2.4).
ZERO_WIDTH = {"Mn", "Me", "Cf"}
CONJOINING = [range(0x1160, 0x1200), range(0x1F3FB, 0x1F400)]


def zero_width_runs():
    """Lengths of runs from U+0000 on, in turn of characters with and without width; unassigned ones go with those before."""
    runs, start, inside = [], 0, False
    for code in range(sys.maxunicode + 1):
        category = unicodedata.category(chr(code))
        if category == "Cn" or inside == (category in ZERO_WIDTH or any(code in each for each in CONJOINING)):
            continue
        length = code - start
        while length > 0xFFFF:  # too long for one number
            runs += [0xFFFF, 0]
            length -= 0xFFFF
        runs.append(length)
        start, inside = code, not inside
    return runs


def cut(source_path, target_path):
    """Subsets one face and returns it."""
    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.desubroutinize = True
    options.recalc_timestamp = False
    options.notdef_outline = True
    font = subset.load_font(source_path, options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=CHARACTERS)
    subsetter.subset(font)
    subset.save_font(font, target_path, options)
    return TTFont(target_path)


def face_lines(name, font):
    """One face as C++: its heights in em and its table of advance widths."""
    units = font["head"].unitsPerEm
    os2, hhea, advances = font["OS/2"], font["hhea"], font["hmtx"]
    widths = sorted((code, advances[glyph][0]) for code, glyph in font.getBestCmap().items())
    lines = [f"inline constexpr GlyphWidth k_{name.lower()}_widths[] = {{"]
    for at in range(0, len(widths), 8):
        lines.append("    " + " ".join(f"{{0x{code:04X}, {width}}}," for code, width in widths[at:at + 8]))
    lines.append("};")
    lines.append(f"inline constexpr FaceMetrics k_{name.lower()} = {{")
    lines.append(f"    .units_per_em = {units},")
    lines.append(f"    .ascent_em = {hhea.ascent / units:.4f},")
    lines.append(f"    .descent_em = {-hhea.descent / units:.4f},")
    lines.append(f"    .cap_height_em = {os2.sCapHeight / units:.4f},")
    lines.append(f"    .widths = k_{name.lower()}_widths,")
    lines.append("};")
    return lines


def main(source_dir, fonts_dir, header_path):
    os.makedirs(fonts_dir, exist_ok=True)
    lines = [
        "// Advance widths and heights of the embedded typeface, made by assets/fonts/make_fonts.py: not to be edited.",
        "#pragma once",
        "",
        "#include <cstdint>",
        "#include <span>",
        "",
        "namespace fogsheet::generated {",
        "",
        "/// How far a character moves the pen, in the face's units.",
        "struct GlyphWidth {",
        "  char32_t character;",
        "  std::uint16_t advance_units;",
        "};",
        "",
        "/// One face. Heights are measured from the baseline, both positive; widths are sorted by character.",
        "struct FaceMetrics {",
        "  int units_per_em;",
        "  double ascent_em;",
        "  double descent_em;",
        "  double cap_height_em;",
        "  std::span<const GlyphWidth> widths;",
        "};",
        "",
    ]
    for face in FACES:
        name = f"B612-{face}.otf"
        font = cut(os.path.join(source_dir, name), os.path.join(fonts_dir, name))
        lines += face_lines(face, font) + [""]
    lines.append("/// Lengths of runs of characters from U+0000 on, in turn with a width of their own and without.")
    lines.append("inline constexpr std::uint16_t k_zero_width_runs[] = {")
    runs = zero_width_runs()
    for at in range(0, len(runs), 16):
        lines.append("    " + " ".join(f"{length}," for length in runs[at:at + 16]))
    lines += ["};", ""]
    lines.append("}  // namespace fogsheet::generated")
    os.makedirs(os.path.dirname(header_path), exist_ok=True)
    with open(header_path, "w", encoding="utf-8") as header:
        header.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main(*sys.argv[1:])
