// The yard.
#include "tests/core/pack/yard.h"

#include <fstream>
#include <iterator>

#include "tests/core/survey/sample_job.h"

namespace cotter::test {

namespace {

Bytes small_photo(std::uint8_t shade) {
    Image image = make_image(96, 64);
    for (std::size_t i = 0; i < image.pixels.size(); ++i) image.pixels[i] = static_cast<std::uint8_t>(shade + i % 97);
    return encode_jpeg(image, 90).value();
}

const Bytes& font() {
    static const Bytes bytes = [] {
        std::ifstream file(COTTER_TEST_FONT, std::ios::binary);
        return Bytes(std::istreambuf_iterator<char>(file), {});
    }();
    return bytes;
}

Shot shot_of(const Stored& stored, int id, Stage stage) {
    Shot shot = sample_shot();
    shot.id = {numbered(id)};
    shot.stage = stage;
    shot.photo.sha256 = stored.sha256;
    shot.photo.bytes = static_cast<std::int64_t>(stored.size);
    shot.photo.width = stored.info.width;
    shot.photo.height = stored.info.height;
    return shot;
}

}  // namespace

DeviceKey yard_key() {
    return DeviceKey::from_seed(Bytes(32, 3), "yard").value();
}

Job yard_job(Files& files) {
    SerialWorkers workers;
    PhotoVault vault(files, workers, "/book");
    const Shot before = shot_of(vault.take_in(small_photo(10)).value(), 3, Stage::before);
    const Shot after = shot_of(vault.take_in(small_photo(80)).value(), 31, Stage::after);
    return apply(sample_job(), edit_of({Put{before, {}}, Put{after, {}}}, 7)).value();
}

Result<Packed> pack_in_yard(Files& files, const Job& job, std::span<const PacketFacts> earlier,
                            std::span<const Job> visits) {
    SerialWorkers workers;
    PhotoVault vault(files, workers, "/book");
    const DeviceKey key = yard_key();
    return pack({files, workers, vault, key, font(), font(), "Cotter test"}, job, earlier, "/out", visits);
}

}  // namespace cotter::test
