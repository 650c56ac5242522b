// What zips need of compression: CRC-32, deflating a whole text, inflating a stream with its bounds kept. Any thread.
#pragma once

#include <functional>
#include <memory>

#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

[[nodiscard]] std::uint32_t crc32_of(ByteView bytes, std::uint32_t start = 0);

// Raw deflate at zip::kOurLevel.
[[nodiscard]] Bytes deflate_bytes(ByteView bytes);

// Takes raw deflate data piece by piece and gives what it unpacks to; refuses more than `size` bytes.
class Inflater {
public:
    explicit Inflater(std::uint64_t size);
    ~Inflater();
    Inflater(const Inflater&) = delete;
    Inflater& operator=(const Inflater&) = delete;
    Result<> add(ByteView packed, const std::function<void(ByteView)>& sink);
    // Fails unless the stream ended with exactly `size` bytes and no packed byte was left over.
    Result<> finish();

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace cotter
