// Exif by libexif. The only file that includes its headers.
#include <libexif/exif-data.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <fmt/format.h>
#include <memory>
#include <string>

#include "core/photo/exif.h"

namespace cotter {

namespace {

struct Unref {
    void operator()(ExifData* data) const { exif_data_unref(data); }
    void operator()(ExifEntry* entry) const { exif_entry_unref(entry); }
    void operator()(ExifMem* mem) const { exif_mem_unref(mem); }
};
using DataPtr = std::unique_ptr<ExifData, Unref>;
using EntryPtr = std::unique_ptr<ExifEntry, Unref>;

// Data that libexif neither mends nor filters: the options that new data starts with would do both.
DataPtr new_data() {
    DataPtr data(exif_data_new());
    exif_data_unset_option(data.get(), EXIF_DATA_OPTION_IGNORE_UNKNOWN_TAGS);
    exif_data_unset_option(data.get(), EXIF_DATA_OPTION_FOLLOW_SPECIFICATION);
    return data;
}

constexpr std::array<unsigned, 5> kSerialTags{EXIF_TAG_BODY_SERIAL_NUMBER, EXIF_TAG_LENS_SERIAL_NUMBER,
                                              EXIF_TAG_IMAGE_UNIQUE_ID, 0xC62F /* camera serial */,
                                              0xC65D /* raw id */};
constexpr std::array<unsigned, 12> kNameTags{
    EXIF_TAG_ARTIST,        EXIF_TAG_COPYRIGHT,         EXIF_TAG_CAMERA_OWNER_NAME, EXIF_TAG_USER_COMMENT,
    EXIF_TAG_DOCUMENT_NAME, EXIF_TAG_IMAGE_DESCRIPTION, 0x013C /* host computer */, EXIF_TAG_XP_TITLE,
    EXIF_TAG_XP_COMMENT,    EXIF_TAG_XP_AUTHOR,         EXIF_TAG_XP_KEYWORDS,       EXIF_TAG_XP_SUBJECT};

template <class Tags>
bool among(const Tags& tags, unsigned tag) {
    return std::find(tags.begin(), tags.end(), tag) != tags.end();
}

void note_private(ExifEntry* entry, void* user) {
    auto& found = *static_cast<PrivateData*>(user);
    const unsigned tag = entry->tag;
    const ExifIfd ifd = exif_entry_get_ifd(entry);
    if (ifd == EXIF_IFD_GPS) {
        found.position |= tag != 0;  // tag 0 is only the version of the GPS block
    } else {
        found.serial_numbers |= among(kSerialTags, tag);
        found.names |= among(kNameTags, tag);
        found.maker_notes |= tag == EXIF_TAG_MAKER_NOTE;
        found.texts |= tag == EXIF_TAG_XML_PACKET || tag == 0x83BB /* IPTC */;
    }
}

void note_private_in(ExifContent* content, void* user) {
    exif_content_foreach_entry(content, note_private, user);
}

std::string ascii_of(ExifData* data, ExifIfd ifd, ExifTag tag) {
    const ExifEntry* entry = exif_content_get_entry(data->ifd[ifd], tag);
    if (entry == nullptr || entry->data == nullptr || entry->format != EXIF_FORMAT_ASCII) return {};
    const std::string text(reinterpret_cast<const char*>(entry->data), entry->size);
    return text.substr(0, text.find('\0'));
}

// The value of a SHORT entry, or −1.
int short_of(ExifData* data, ExifIfd ifd, ExifTag tag) {
    const ExifEntry* entry = exif_content_get_entry(data->ifd[ifd], tag);
    if (entry == nullptr || entry->data == nullptr || entry->format != EXIF_FORMAT_SHORT || entry->size < 2) return -1;
    return exif_get_short(entry->data, exif_data_get_byte_order(data));
}

int orientation_of(ExifData* data) {
    const int value = short_of(data, EXIF_IFD_0, EXIF_TAG_ORIENTATION);
    return value >= 1 && value <= 8 ? value : 1;
}

// "2026:05:14 08:05:12" and "-05:00", parsed as the RFC 3339 time they make together.
std::optional<Instant> parse_exif_time(std::string text, const std::string& offset) {
    if (text.size() != 19) return std::nullopt;
    text[4] = text[7] = '-';
    text[10] = 'T';
    const auto instant = Instant::parse(text + offset);
    return instant ? std::optional(*instant) : std::nullopt;
}

void read_time(ExifData* data, ExifTag time_tag, ExifTag offset_tag, ExifFacts& facts) {
    const std::string text = ascii_of(data, EXIF_IFD_EXIF, time_tag);
    const auto wall = parse_exif_time(text, "Z");
    if (!wall) return;
    facts.taken_wall = wall->wall();
    if (const auto whole = parse_exif_time(text, ascii_of(data, EXIF_IFD_EXIF, offset_tag)))
        facts.taken_offset_min = whole->offset_min;
}

// --- Writing. libexif wants entry data from its own allocator and frees it there.

void add_entry(ExifData* data, ExifIfd ifd, ExifTag tag, ExifFormat format, std::string_view bytes, unsigned count) {
    const std::unique_ptr<ExifMem, Unref> mem(exif_mem_new_default());
    const EntryPtr entry(exif_entry_new_mem(mem.get()));
    entry->tag = tag;
    entry->format = format;
    entry->components = count;
    entry->size = static_cast<unsigned>(bytes.size());
    entry->data = static_cast<unsigned char*>(exif_mem_alloc(mem.get(), entry->size));
    std::memcpy(entry->data, bytes.data(), bytes.size());
    exif_content_add_entry(data->ifd[ifd], entry.get());
}

void add_ascii(ExifData* data, ExifTag tag, const std::string& text) {
    const std::string_view with_end(text.c_str(), text.size() + 1);
    add_entry(data, EXIF_IFD_EXIF, tag, EXIF_FORMAT_ASCII, with_end, static_cast<unsigned>(with_end.size()));
}

void add_short(ExifData* data, ExifIfd ifd, ExifTag tag, int value) {
    const char bytes[2] = {static_cast<char>(value >> 8), static_cast<char>(value)};
    add_entry(data, ifd, tag, EXIF_FORMAT_SHORT, {bytes, 2}, 1);
}

void add_undefined(ExifData* data, ExifTag tag, std::string_view bytes) {
    add_entry(data, EXIF_IFD_EXIF, tag, EXIF_FORMAT_UNDEFINED, bytes, static_cast<unsigned>(bytes.size()));
}

void add_time(ExifData* data, const ExifFacts& facts) {
    const auto& w = *facts.taken_wall;
    add_ascii(data, EXIF_TAG_DATE_TIME_ORIGINAL,
              fmt::format("{:04}:{:02}:{:02} {:02}:{:02}:{:02}", w.date.year, w.date.month, w.date.day, w.hour,
                          w.minute, w.second));
    if (facts.taken_offset_min)
        add_ascii(data, EXIF_TAG_OFFSET_TIME_ORIGINAL,
                  Instant::from_wall(w, *facts.taken_offset_min).text().substr(19));
}

// What the Exif standard demands of every JPEG; constants but for the size.
void add_demanded(ExifData* data, int width, int height) {
    constexpr std::string_view k72PerInch("\0\0\0\x48\0\0\0\1", 8);
    add_entry(data, EXIF_IFD_0, EXIF_TAG_X_RESOLUTION, EXIF_FORMAT_RATIONAL, k72PerInch, 1);
    add_entry(data, EXIF_IFD_0, EXIF_TAG_Y_RESOLUTION, EXIF_FORMAT_RATIONAL, k72PerInch, 1);
    add_short(data, EXIF_IFD_0, EXIF_TAG_RESOLUTION_UNIT, 2);
    add_short(data, EXIF_IFD_0, EXIF_TAG_YCBCR_POSITIONING, 1);
    add_undefined(data, EXIF_TAG_EXIF_VERSION, "0232");
    add_undefined(data, EXIF_TAG_COMPONENTS_CONFIGURATION, std::string_view("\1\2\3\0", 4));
    add_undefined(data, EXIF_TAG_FLASH_PIX_VERSION, "0100");
    add_short(data, EXIF_IFD_EXIF, EXIF_TAG_PIXEL_X_DIMENSION, width);
    add_short(data, EXIF_IFD_EXIF, EXIF_TAG_PIXEL_Y_DIMENSION, height);
}

}  // namespace

ExifFacts read_exif(ByteView block) {
    ExifFacts facts;
    Bytes with_signature = to_bytes(std::string_view("Exif\0\0", 6));
    with_signature.insert(with_signature.end(), block.begin(), block.end());
    const DataPtr data = new_data();
    exif_data_load_data(data.get(), with_signature.data(), static_cast<unsigned>(with_signature.size()));

    exif_data_foreach_content(data.get(), note_private_in, &facts.private_data);
    facts.private_data.thumbnail = data->data != nullptr && data->size > 0;
    unsigned entries = 0;
    for (const ExifContent* content : data->ifd) entries += content->count;
    facts.private_data.other = entries == 0 && !block.empty();

    facts.orientation = orientation_of(data.get());
    facts.colour_space = short_of(data.get(), EXIF_IFD_EXIF, EXIF_TAG_COLOR_SPACE) == 0xFFFF ? 0xFFFF : 1;
    read_time(data.get(), EXIF_TAG_DATE_TIME_ORIGINAL, EXIF_TAG_OFFSET_TIME_ORIGINAL, facts);
    if (!facts.taken_wall) read_time(data.get(), EXIF_TAG_DATE_TIME_DIGITIZED, EXIF_TAG_OFFSET_TIME_DIGITIZED, facts);
    return facts;
}

Bytes minimal_exif(const ExifFacts& facts, int width, int height) {
    const DataPtr data = new_data();
    exif_data_set_byte_order(data.get(), EXIF_BYTE_ORDER_MOTOROLA);
    add_short(data.get(), EXIF_IFD_0, EXIF_TAG_ORIENTATION, facts.orientation);
    add_short(data.get(), EXIF_IFD_EXIF, EXIF_TAG_COLOR_SPACE, facts.colour_space);
    add_demanded(data.get(), width, height);
    if (facts.taken_wall) add_time(data.get(), facts);

    unsigned char* saved = nullptr;
    unsigned size = 0;
    exif_data_save_data(data.get(), &saved, &size);
    const Bytes all(saved, saved + size);
    std::free(saved);  // libexif's default allocator is malloc
    return {all.begin() + 6, all.end()};
}

}  // namespace cotter
