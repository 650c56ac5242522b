// The only file that includes libharu. Its errors come by a callback; the first one is remembered, every later call on
// the broken document does nothing, and finish() reports it.
#include "core/report/page.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <hpdf.h>

#include "core/base/text.h"

namespace cotter {

namespace {

constexpr float kMargin = 45;
constexpr float kFooter = 22;
constexpr float kLineFactor = 1.3F;
constexpr float kCellGap = 6;
constexpr float kPictureGap = 12;
constexpr float kPictureHeight = 190;

float size_of(Look look) {
    switch (look) {
        case Look::small:
            return 8;
        case Look::heading:
            return 13;
        case Look::title:
            return 20;
        default:
            return 9.5F;
    }
}

bool is_bold(Look look) {
    return look == Look::bold || look == Look::heading || look == Look::title;
}

// libharu drops what is beyond U+FFFF without a word, so it is replaced where one can see it; control characters too.
std::string drawable(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const std::size_t length = byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : byte >= 0xC0 ? 2 : 1;
        if (length == 4)
            out += "\xEF\xBF\xBD";
        else if (byte < 0x20)
            out += ' ';
        else
            out += text.substr(i, length);
        i += length;
    }
    return out;
}

std::size_t next_character(std::string_view text, std::size_t at) {
    do ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80);
    return at;
}

}  // namespace

struct PdfPages::State {
    HPDF_Doc doc = nullptr;
    HPDF_Font regular = nullptr;
    HPDF_Font bold = nullptr;
    HPDF_Page page = nullptr;
    std::vector<HPDF_Page> pages;
    ReportInputs inputs;
    HPDF_STATUS error = HPDF_OK;
    float y = 0;  // down from the top of the page
    int picture_column = 0;
    float picture_row_height = 0;
    float indent = 0;

    ~State() { HPDF_Free(doc); }
    [[nodiscard]] float height() const { return HPDF_Page_GetHeight(page); }
    [[nodiscard]] float width() const { return HPDF_Page_GetWidth(page) - 2 * kMargin; }
    [[nodiscard]] float bottom() const { return height() - kMargin - kFooter; }
    [[nodiscard]] HPDF_Font font(Look look) const { return is_bold(look) ? bold : regular; }
    [[nodiscard]] float text_width(Look look, const std::string& text) const {
        HPDF_Page_SetFontAndSize(page, font(look), size_of(look));
        return HPDF_Page_TextWidth(page, text.c_str());
    }

    void add_page() {
        page = HPDF_AddPage(doc);
        HPDF_Page_SetSize(page, inputs.paper == Paper::a4 ? HPDF_PAGE_SIZE_A4 : HPDF_PAGE_SIZE_LETTER,
                          HPDF_PAGE_PORTRAIT);
        pages.push_back(page);
        y = kMargin;
        picture_column = 0;
        picture_row_height = 0;
    }
    void need(float room) {
        if (y + room > bottom() && y > kMargin) add_page();
    }

    void show(Look look, float x, float top, const std::string& text) const {
        HPDF_Page_BeginText(page);
        HPDF_Page_SetFontAndSize(page, font(look), size_of(look));
        HPDF_Page_TextOut(page, x, height() - top - size_of(look), text.c_str());
        HPDF_Page_EndText(page);
    }

    // Breaks at spaces, and within words that are wider than a whole line.
    [[nodiscard]] std::vector<std::string> wrap(Look look, std::string_view text, float room) const {
        std::vector<std::string> lines;
        std::string line;
        const std::string clean = drawable(text);
        for (std::size_t at = 0; at < clean.size();) {
            auto end = clean.find(' ', at);
            end = end == std::string::npos ? clean.size() : end;
            std::string word = clean.substr(at, end - at);
            const std::string longer = line.empty() ? word : line + " " + word;
            if (text_width(look, longer) <= room) {
                line = longer;
            } else {
                if (!line.empty()) lines.push_back(std::exchange(line, {}));
                line = break_word(look, std::move(word), room, lines);
            }
            at = end + 1;
        }
        if (!line.empty() || lines.empty()) lines.push_back(line);
        return lines;
    }
    std::string break_word(Look look, std::string word, float room, std::vector<std::string>& lines) const {
        while (text_width(look, word) > room) {
            std::size_t cut = next_character(word, 0);
            for (auto more = next_character(word, cut);
                 more <= word.size() && text_width(look, word.substr(0, more)) <= room;
                 more = next_character(word, more))
                cut = more;
            lines.push_back(word.substr(0, cut));
            word.erase(0, cut);
        }
        return word;
    }

    void footer(std::size_t number) {
        page = pages[number];
        const float top = height() - kMargin - 4;
        HPDF_Page_SetLineWidth(page, 0.5F);
        HPDF_Page_MoveTo(page, kMargin, height() - top + 4);
        HPDF_Page_LineTo(page, kMargin + width(), height() - top + 4);
        HPDF_Page_Stroke(page);
        show(Look::small, kMargin, top, drawable(inputs.packet_name));
        const std::string count = fmt::format("page {} of {}", number + 1, pages.size());
        show(Look::small, kMargin + width() - text_width(Look::small, count), top, count);
    }
};

namespace {

void remember_error(HPDF_STATUS error, HPDF_STATUS, void* user) {
    auto& first = *static_cast<HPDF_STATUS*>(user);
    if (first == HPDF_OK) first = error;
}

HPDF_Font load_font(HPDF_Doc doc, ByteView bytes) {
    const char* name = HPDF_LoadTTFontFromMemory(doc, bytes.data(), static_cast<HPDF_UINT>(bytes.size()), HPDF_TRUE);
    return name == nullptr ? nullptr : HPDF_GetFont(doc, name, "UTF-8");
}

HPDF_Date pdf_date(const Instant& at) {
    const Instant::Wall w = at.wall();
    const int offset = std::abs(at.offset_min);
    return {w.date.year, w.date.month, w.date.day, w.hour, w.minute, w.second, at.offset_min < 0 ? '-' : '+',
            offset / 60, offset % 60};
}

}  // namespace

PdfPages::PdfPages(std::unique_ptr<State> state) : state_(std::move(state)) {}
PdfPages::~PdfPages() = default;

Result<std::unique_ptr<PdfPages>> PdfPages::create(const ReportInputs& inputs) {
    auto state = std::make_unique<State>();
    State& s = *state;
    s.inputs = inputs;
    s.doc = HPDF_New(remember_error, &s.error);
    if (s.doc == nullptr) return fail(Errc::io, "the PDF library cannot start");
    HPDF_SetCompressionMode(s.doc, HPDF_COMP_TEXT);
    HPDF_UseUTFEncodings(s.doc);
    s.regular = load_font(s.doc, inputs.font);
    s.bold = load_font(s.doc, inputs.font_bold);
    if (s.regular == nullptr || s.bold == nullptr) return fail(Errc::damaged, "the report's font cannot be read");
    HPDF_SetInfoDateAttr(s.doc, HPDF_INFO_CREATION_DATE, pdf_date(inputs.at));
    HPDF_SetInfoDateAttr(s.doc, HPDF_INFO_MOD_DATE, pdf_date(inputs.at));
    HPDF_SetInfoAttr(s.doc, HPDF_INFO_CREATOR, inputs.software.c_str());
    HPDF_SetInfoAttr(s.doc, HPDF_INFO_TITLE, inputs.packet_name.c_str());
    s.add_page();
    return std::unique_ptr<PdfPages>(new PdfPages(std::move(state)));
}

void PdfPages::text(Look look, const std::string& text) {
    State& s = *state_;
    const float step = size_of(look) * kLineFactor;
    for (const std::string& line : s.wrap(look, text, s.width() - s.indent)) {
        s.need(step);
        s.show(look, kMargin + s.indent, s.y, line);
        s.y += step;
    }
    s.indent = 0;
}

void PdfPages::gap(double points) {
    state_->y += static_cast<float>(points);
}

void PdfPages::rule() {
    State& s = *state_;
    HPDF_Page_SetLineWidth(s.page, 0.5F);
    HPDF_Page_MoveTo(s.page, kMargin, s.height() - s.y - 1);
    HPDF_Page_LineTo(s.page, kMargin + s.width(), s.height() - s.y - 1);
    HPDF_Page_Stroke(s.page);
    s.y += 4;
}

void PdfPages::heading(const std::string& text_, double room) {
    state_->y += 8;
    state_->need(static_cast<float>(room));
    text(Look::heading, text_);
    rule();
}

void PdfPages::row(const std::vector<Column>& columns, const std::vector<std::string>& cells) {
    State& s = *state_;
    double shares = 0;
    for (const Column& c : columns) shares += c.share;
    std::vector<std::vector<std::string>> wrapped;
    float tall = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const auto room = static_cast<float>(columns[i].share / shares) * (s.width() - s.indent) - kCellGap;
        wrapped.push_back(s.wrap(columns[i].look, cells[i], room));
        tall = std::max(tall, static_cast<float>(wrapped[i].size()) * size_of(columns[i].look) * kLineFactor);
    }
    if (tall < s.bottom() - kMargin) s.need(tall);
    const std::size_t lines =
        std::max_element(wrapped.begin(), wrapped.end(), [](auto& a, auto& b) { return a.size() < b.size(); })->size();
    const float step = size_of(Look::body) * kLineFactor;
    for (std::size_t line = 0; line < lines; ++line) {
        s.need(step);
        float x = kMargin + s.indent;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (line < wrapped[i].size()) s.show(columns[i].look, x, s.y, wrapped[i][line]);
            x += static_cast<float>(columns[i].share / shares) * (s.width() - s.indent);
        }
        s.y += step;
    }
    s.y += 1.5F;
    s.indent = 0;
}

// Shapes that differ without colour: an empty ring, a diamond half as heavy, a filled triangle, a filled block with a
// cross of paper in it.
void PdfPages::grade_mark(Grade grade) {
    State& s = *state_;
    s.need(16);
    const float r = 4.5F;
    const float x = kMargin + r;
    const float y = s.height() - s.y - 6;
    HPDF_Page_SetLineWidth(s.page, 1.2F);
    const auto path = [&](std::initializer_list<std::pair<float, float>> points) {
        bool first = true;
        for (const auto& [dx, dy] : points) {
            first ? HPDF_Page_MoveTo(s.page, x + dx, y + dy) : HPDF_Page_LineTo(s.page, x + dx, y + dy);
            first = false;
        }
    };
    switch (grade) {
        case Grade::serviceable:
            HPDF_Page_Circle(s.page, x, y, r - 0.8F);
            HPDF_Page_Stroke(s.page);
            break;
        case Grade::watch:
            path({{0, r}, {r, 0}, {0, -r}, {-r, 0}});
            HPDF_Page_ClosePathStroke(s.page);
            break;
        case Grade::repair:
            path({{0, r}, {r, -r}, {-r, -r}});
            HPDF_Page_ClosePathFillStroke(s.page);
            break;
        case Grade::do_not_tow:
            path({{-r, r}, {r, r}, {r, -r}, {-r, -r}});
            HPDF_Page_ClosePathFillStroke(s.page);
            HPDF_Page_SetRGBStroke(s.page, 1, 1, 1);
            path({{-r + 2, r - 2}, {r - 2, -r + 2}});
            HPDF_Page_Stroke(s.page);
            path({{-r + 2, -r + 2}, {r - 2, r - 2}});
            HPDF_Page_Stroke(s.page);
            HPDF_Page_SetRGBStroke(s.page, 0, 0, 0);
            break;
    }
    s.indent = 2 * r + 6;
}

void PdfPages::new_page() {
    if (state_->y > kMargin) state_->add_page();
}

void PdfPages::picture(const ReportPicture& picture, const std::string& caption) {
    State& s = *state_;
    const float cell = (s.width() - kPictureGap) / 2;
    const float scale =
        std::min(cell / static_cast<float>(picture.width), kPictureHeight / static_cast<float>(picture.height));
    const float w = static_cast<float>(picture.width) * scale;
    const float h = static_cast<float>(picture.height) * scale;
    if (s.picture_column == 0) s.need(kPictureHeight + 26);
    const HPDF_Image image =
        HPDF_LoadJpegImageFromMem(s.doc, picture.jpeg.data(), static_cast<HPDF_UINT>(picture.jpeg.size()));
    if (image == nullptr) return;
    const float x = kMargin + static_cast<float>(s.picture_column) * (cell + kPictureGap);
    HPDF_Page_DrawImage(s.page, image, x, s.height() - s.y - h, w, h);
    float text_top = s.y + h + 3;
    for (const std::string& line : s.wrap(Look::small, caption, cell)) {
        s.show(Look::small, x, text_top, line);
        text_top += size_of(Look::small) * kLineFactor;
    }
    s.picture_row_height = std::max(s.picture_row_height, text_top - s.y + 6);
    s.picture_column = 1 - s.picture_column;
    if (s.picture_column == 0) end_pictures();
}

void PdfPages::end_pictures() {
    state_->y += state_->picture_row_height;
    state_->picture_row_height = 0;
    state_->picture_column = 0;
}

Result<Bytes> PdfPages::finish() {
    State& s = *state_;
    for (std::size_t i = 0; i < s.pages.size(); ++i) s.footer(i);
    HPDF_SaveToStream(s.doc);
    Bytes out(HPDF_GetStreamSize(s.doc));
    auto size = static_cast<HPDF_UINT32>(out.size());
    if (!out.empty()) HPDF_ReadFromStream(s.doc, out.data(), &size);
    if (s.error != HPDF_OK || out.empty())
        return fail(Errc::io, fmt::format("the report could not be written (PDF library error {:#x})", s.error));
    return out;
}

}  // namespace cotter
