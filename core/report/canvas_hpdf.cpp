// The canvas over libharu, whose every call may fail silently: its error is looked at after pictures and at the end.
// Its public functions load fonts from named files only; its own stream functions, in its installed headers, serve
// for fonts in memory.
#include "core/report/canvas.h"

#include <fmt/format.h>
#include <hpdf.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <vector>

namespace cotter {

namespace {

struct DocumentDeleter {
    void operator()(HPDF_Doc doc) const { HPDF_Free(doc); }
};

constexpr HPDF_REAL real(double value) {
    return static_cast<HPDF_REAL>(value);
}

std::size_t big_endian(ByteView bytes, std::size_t at, std::size_t count) {
    std::size_t out = 0;
    for (std::size_t i = 0; i < count; ++i) out = out << 8 | bytes[at + i];
    return out;
}

// libharu crashes over files that are cut off, so the table directory is looked at first.
bool is_whole_font(ByteView bytes) {
    constexpr std::size_t kHead = 12, kEntry = 16;
    if (bytes.size() < kHead || big_endian(bytes, 0, 4) != 0x00010000) return false;
    const std::size_t tables = big_endian(bytes, 4, 2);
    if (tables == 0 || bytes.size() < kHead + tables * kEntry) return false;
    std::string found;
    for (std::size_t i = 0; i < tables; ++i) {
        const std::size_t entry = kHead + i * kEntry;
        if (big_endian(bytes, entry + 8, 4) + big_endian(bytes, entry + 12, 4) > bytes.size()) return false;
        found += std::string(as_text(bytes.subspan(entry, 4))) + " ";
    }
    for (const char* needed : {"OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name"})
        if (found.find(needed) == std::string::npos) return false;
    return true;
}

// What HPDF_LoadTTFontFromFile does after opening the file. The document owns the result.
HPDF_FontDef load_font(HPDF_Doc doc, ByteView bytes, const char* tag) {
    HPDF_Stream stream = HPDF_MemStream_New(doc->mmgr, static_cast<HPDF_UINT>(bytes.size() + 1));
    if (stream == nullptr) return nullptr;
    if (HPDF_Stream_Write(stream, bytes.data(), static_cast<HPDF_UINT>(bytes.size())) != HPDF_OK ||
        HPDF_Stream_Seek(stream, 0, HPDF_SEEK_SET) != HPDF_OK) {
        HPDF_Stream_Free(stream);
        return nullptr;
    }
    HPDF_FontDef font = HPDF_TTFontDef_Load(doc->mmgr, stream, HPDF_TRUE);  // takes the stream, even when it fails
    if (font == nullptr) return nullptr;
    if (HPDF_List_Add(doc->fontdef_list, font) != HPDF_OK) {
        HPDF_FontDef_Free(font);
        return nullptr;
    }
    std::array<char, 8> name{};
    std::strncpy(name.data(), tag, 6);
    HPDF_TTFontDef_SetTagName(font, name.data());
    return font;
}

// Texts are written as UTF-16 codes, but libharu's map from codes back to letters is not of the form that PDF asks for
// (ISO 32000-1, 9.10.3), so that searching and copying fail in strict readers. Ours takes its place.
void replace_unicode_map(HPDF_Font font) {
    auto* map = static_cast<HPDF_Dict>(HPDF_Dict_GetItem(font, "ToUnicode", HPDF_OCLASS_DICT));
    if (map == nullptr || map->stream == nullptr) return;
    std::string text =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    constexpr int kMostRanges = 100;  // in one list
    for (int from = 0; from < 256; from += kMostRanges) {
        const int to = std::min(256, from + kMostRanges);
        text += fmt::format("{} beginbfrange\n", to - from);
        for (int high = from; high < to; ++high) text += fmt::format("<{0:02X}00> <{0:02X}FF> <{0:02X}00>\n", high);
        text += "endbfrange\n";
    }
    text += "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
    HPDF_MemStream_FreeData(map->stream);
    HPDF_Stream_WriteStr(map->stream, text.c_str());
}

HPDF_Date pdf_date(Instant at) {
    const auto wall = at.wall();
    const int away = at.offset_min < 0 ? -at.offset_min : at.offset_min;
    return {wall.date.year,
            wall.date.month,
            wall.date.day,
            wall.hour,
            wall.minute,
            wall.second,
            at.offset_min < 0 ? '-' : '+',
            away / 60,
            away % 60};
}

}  // namespace

struct Canvas::State {
    std::unique_ptr<HPDF_Doc_Rec, DocumentDeleter> doc;
    std::array<HPDF_FontDef, 2> defs{};
    std::array<HPDF_Font, 2> fonts{};
    double width = 0, height = 0;
    std::vector<HPDF_Page> pages;
    HPDF_Page page = nullptr;

    [[nodiscard]] bool failed() const { return HPDF_GetError(doc.get()) != HPDF_OK; }
    [[nodiscard]] HPDF_REAL up(double y) const { return real(height - y); }

    Result<> load_fonts(ByteView regular, ByteView bold) {
        HPDF_UseUTFEncodings(doc.get());
        HPDF_SetCurrentEncoder(doc.get(), "UTF-8");
        const std::array<ByteView, 2> bytes{regular, bold};
        constexpr std::array<const char*, 2> tags{"COTTRA", "COTTRB"};
        for (std::size_t i = 0; i < 2; ++i) {
            if (is_whole_font(bytes[i])) defs[i] = load_font(doc.get(), bytes[i], tags[i]);
            if (defs[i] != nullptr) fonts[i] = HPDF_GetFont(doc.get(), defs[i]->base_font, "UTF-8");
            if (fonts[i] == nullptr)
                return fail(Errc::refused, "the report's font does not load", i == 0 ? "regular" : "bold",
                            "install the program again, its fonts are damaged or missing");
            replace_unicode_map(fonts[i]);
        }
        return {};
    }

    void describe(const About& about) {
        HPDF_SetInfoAttr(doc.get(), HPDF_INFO_TITLE, about.title.c_str());
        HPDF_SetInfoAttr(doc.get(), HPDF_INFO_AUTHOR, about.author.c_str());
        HPDF_SetInfoAttr(doc.get(), HPDF_INFO_CREATOR, about.software.c_str());
        // Without the library's version: builds of one release tell it differently, and the same job gives the same
        // bytes.
        HPDF_SetInfoAttr(doc.get(), HPDF_INFO_PRODUCER, "Cotter, with the Haru library");
        HPDF_SetInfoDateAttr(doc.get(), HPDF_INFO_CREATION_DATE, pdf_date(about.at));
        HPDF_SetInfoDateAttr(doc.get(), HPDF_INFO_MOD_DATE, pdf_date(about.at));
    }

    void paint_path(std::optional<Ink> fill, std::optional<Ink> edge) {
        if (fill && edge)
            HPDF_Page_FillStroke(page);
        else if (fill)
            HPDF_Page_Fill(page);
        else if (edge)
            HPDF_Page_Stroke(page);
        else
            HPDF_Page_EndPath(page);
    }

    void inks(std::optional<Ink> fill, std::optional<Ink> edge, double thickness) {
        if (fill) HPDF_Page_SetRGBFill(page, fill->r, fill->g, fill->b);
        if (edge) {
            HPDF_Page_SetRGBStroke(page, edge->r, edge->g, edge->b);
            HPDF_Page_SetLineWidth(page, real(thickness));
        }
    }
};

Canvas::Canvas(std::unique_ptr<State> state) : state_(std::move(state)) {}
Canvas::~Canvas() = default;

Result<std::unique_ptr<Canvas>> Canvas::make(Paper paper, ByteView regular, ByteView bold, const About& about) {
    auto state = std::make_unique<State>();
    state->doc.reset(HPDF_New(nullptr, nullptr));
    if (!state->doc) return fail(Errc::no_space, "there is no memory for the report");
    HPDF_SetCompressionMode(state->doc.get(), HPDF_COMP_ALL);
    COTTER_TRY(state->load_fonts(regular, bold));
    state->describe(about);
    state->width = paper == Paper::a4 ? 595.28 : 612;
    state->height = paper == Paper::a4 ? 841.89 : 792;
    return std::unique_ptr<Canvas>(new Canvas(std::move(state)));
}

double Canvas::page_width() const {
    return state_->width;
}

double Canvas::page_height() const {
    return state_->height;
}

int Canvas::pages() const {
    return static_cast<int>(state_->pages.size());
}

void Canvas::add_page() {
    state_->page = HPDF_AddPage(state_->doc.get());
    if (state_->page != nullptr) {  // else the document has failed, and finish() says so
        HPDF_Page_SetWidth(state_->page, real(state_->width));
        HPDF_Page_SetHeight(state_->page, real(state_->height));
    }
    state_->pages.push_back(state_->page);
}

void Canvas::go_to(int page) {
    state_->page = state_->pages.at(static_cast<std::size_t>(page - 1));
}

bool Canvas::has_sign(char32_t sign) const {
    if (sign > 0xFFFF) return false;
    const auto code = static_cast<HPDF_UINT16>(sign);
    return HPDF_TTFontDef_GetGlyphid(state_->defs[0], code) != 0 &&
           HPDF_TTFontDef_GetGlyphid(state_->defs[1], code) != 0;
}

double Canvas::advance(Face face, char32_t sign) const {
    HPDF_FontDef def = state_->defs[static_cast<std::size_t>(face)];
    const HPDF_UINT16 glyph = HPDF_TTFontDef_GetGlyphid(def, static_cast<HPDF_UINT16>(sign));
    return HPDF_TTFontDef_GetGidWidth(def, glyph) / 1000.0;
}

void Canvas::text(PaperSpot at, Face face, double size, std::string_view text, Ink ink) {
    if (text.empty()) return;
    HPDF_Page_SetRGBFill(state_->page, ink.r, ink.g, ink.b);
    HPDF_Page_BeginText(state_->page);
    HPDF_Page_SetFontAndSize(state_->page, state_->fonts[static_cast<std::size_t>(face)], real(size));
    HPDF_Page_TextOut(state_->page, real(at.x), state_->up(at.y), std::string(text).c_str());
    HPDF_Page_EndText(state_->page);
}

void Canvas::line(PaperSpot from, PaperSpot to, double thickness, Ink ink) {
    state_->inks({}, ink, thickness);
    HPDF_Page_MoveTo(state_->page, real(from.x), state_->up(from.y));
    HPDF_Page_LineTo(state_->page, real(to.x), state_->up(to.y));
    HPDF_Page_Stroke(state_->page);
}

void Canvas::polygon(std::span<const PaperSpot> corners, std::optional<Ink> fill, std::optional<Ink> edge,
                     double thickness) {
    if (corners.size() < 3) return;
    state_->inks(fill, edge, thickness);
    HPDF_Page_MoveTo(state_->page, real(corners[0].x), state_->up(corners[0].y));
    for (const PaperSpot corner : corners.subspan(1))
        HPDF_Page_LineTo(state_->page, real(corner.x), state_->up(corner.y));
    HPDF_Page_ClosePath(state_->page);
    state_->paint_path(fill, edge);
}

void Canvas::circle(PaperSpot centre, double radius, std::optional<Ink> fill, std::optional<Ink> edge,
                    double thickness) {
    state_->inks(fill, edge, thickness);
    HPDF_Page_Circle(state_->page, real(centre.x), state_->up(centre.y), real(radius));
    state_->paint_path(fill, edge);
}

Result<> Canvas::picture(const ReportPicture& picture, PaperSpot upper_left, double width, double height) {
    HPDF_Image image = nullptr;
    if (!picture.jpeg.empty() && !state_->failed())
        image = HPDF_LoadJpegImageFromMem(state_->doc.get(), picture.jpeg.data(),
                                          static_cast<HPDF_UINT>(picture.jpeg.size()));
    const bool fits = image != nullptr && static_cast<int>(HPDF_Image_GetWidth(image)) == picture.width &&
                      static_cast<int>(HPDF_Image_GetHeight(image)) == picture.height;
    if (!fits)
        return fail(Errc::refused, "a picture for the report is empty, no JPEG or not of the size it says", {},
                    "take the photo in again");
    HPDF_Page_DrawImage(state_->page, image, real(upper_left.x), state_->up(upper_left.y + height), real(width),
                        real(height));
    return {};
}

void Canvas::bookmark(std::string_view title, double y) {
    HPDF_Outline entry = HPDF_CreateOutline(state_->doc.get(), nullptr, std::string(title).c_str(),
                                            HPDF_GetEncoder(state_->doc.get(), "UTF-8"));
    HPDF_Destination here = HPDF_Page_CreateDestination(state_->page);
    HPDF_Destination_SetFitH(here, state_->up(y));
    HPDF_Outline_SetDestination(entry, here);
}

Result<Bytes> Canvas::finish() {
    HPDF_Doc doc = state_->doc.get();
    HPDF_SetPageMode(doc, HPDF_PAGE_MODE_USE_NONE);
    if (!state_->failed()) HPDF_SaveToStream(doc);
    if (state_->failed())
        return fail(Errc::io, "the report could not be drawn",
                    fmt::format("libharu error 0x{:04X}", HPDF_GetError(doc)), "free some memory and try again");
    Bytes out(HPDF_GetStreamSize(doc));
    HPDF_ResetStream(doc);
    auto size = static_cast<HPDF_UINT32>(out.size());
    HPDF_ReadFromStream(doc, out.data(), &size);
    out.resize(size);
    return out;
}

}  // namespace cotter
