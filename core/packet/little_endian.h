// Fixed-width numbers, least significant byte first, out of and into byte buffers.
#pragma once

#include <cstdint>

#include "core/base/bytes.h"

namespace cotter {

// Takes fields from the front of a view. The caller has made sure that they are there.
class LittleEndianReader {
public:
    explicit LittleEndianReader(ByteView bytes) : bytes_(bytes) {}
    std::uint16_t u16() { return static_cast<std::uint16_t>(take(2)); }
    std::uint32_t u32() { return static_cast<std::uint32_t>(take(4)); }
    std::uint64_t u64() { return take(8); }
    ByteView bytes(std::size_t count) {
        const ByteView out = bytes_.first(count);
        bytes_ = bytes_.subspan(count);
        return out;
    }
    [[nodiscard]] std::size_t left() const { return bytes_.size(); }

private:
    std::uint64_t take(std::size_t count) {
        std::uint64_t value = 0;
        for (std::size_t i = count; i-- > 0;) value = value << 8 | bytes_[i];
        bytes_ = bytes_.subspan(count);
        return value;
    }
    ByteView bytes_;
};

class LittleEndianWriter {
public:
    LittleEndianWriter& u16(std::uint64_t value) { return put(value, 2); }
    LittleEndianWriter& u32(std::uint64_t value) { return put(value, 4); }
    LittleEndianWriter& u64(std::uint64_t value) { return put(value, 8); }
    LittleEndianWriter& text(std::string_view text) {
        out_.insert(out_.end(), text.begin(), text.end());
        return *this;
    }
    [[nodiscard]] const Bytes& bytes() const { return out_; }

private:
    LittleEndianWriter& put(std::uint64_t value, int count) {
        for (int i = 0; i < count; ++i) out_.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
        return *this;
    }
    Bytes out_;
};

}  // namespace cotter
