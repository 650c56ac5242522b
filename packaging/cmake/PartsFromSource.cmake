# The outside parts for platforms that have none of their own (web, Windows): the same names as in Parts.cmake, compiled
# from what `packaging/parts/fetch web` or `windows` unpacked. Chosen by a toolchain file, with COTTER_PARTS_FROM_SOURCE.
# Lists of files are written out, as elsewhere; what autoconf would have found out is in packaging/parts/config.
set(COTTER_PARTS "$ENV{COTTER_PARTS}" CACHE PATH "Where packaging/parts/fetch unpacks (empty: build/parts)")
set(parts "${COTTER_PARTS}")
if(NOT parts)
  set(parts "${PROJECT_SOURCE_DIR}/build/parts")
endif()
set(parts_config ${PROJECT_SOURCE_DIR}/packaging/parts/config)
find_package(Threads REQUIRED)

# part_from_source(NAME FOLDER files… [INCLUDE folders…] [PRIVATE_INCLUDE folders…] [DEFINE definitions…] [USES parts…])
# Files and folders are named from FOLDER, which is one in the parts folder; INCLUDE is what users see.
function(part_from_source name folder)
  cmake_parse_arguments(ARG "" "" "INCLUDE;PRIVATE_INCLUDE;DEFINE;USES" ${ARGN})
  if(NOT EXISTS ${parts}/${folder})
    message(FATAL_ERROR "${parts}/${folder} is not there: run packaging/parts/fetch with the platform's name")
  endif()
  list(TRANSFORM ARG_UNPARSED_ARGUMENTS PREPEND ${parts}/${folder}/)
  list(TRANSFORM ARG_INCLUDE PREPEND ${parts}/${folder}/)
  list(TRANSFORM ARG_PRIVATE_INCLUDE PREPEND ${parts}/${folder}/)
  add_library(${name} STATIC EXCLUDE_FROM_ALL ${ARG_UNPARSED_ARGUMENTS})
  target_include_directories(${name} SYSTEM PUBLIC ${ARG_INCLUDE})
  target_include_directories(${name} PRIVATE ${ARG_PRIVATE_INCLUDE} ${parts_config})
  target_compile_definitions(${name} PRIVATE ${ARG_DEFINE})
  target_compile_options(${name} PRIVATE -w)
  target_link_libraries(${name} PUBLIC ${ARG_USES})
endfunction()

# Headers alone are those of this machine, seen through a folder that holds nothing else: the machine's own include
# folder must never come before a cross compiler's.
set(headers ${PROJECT_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${headers})
set(all_wanted nlohmann/json.hpp tl/expected.hpp CLI/CLI.hpp stb/stb_image.h fast_float/fast_float.h)
if(COTTER_TESTS)
  list(APPEND all_wanted doctest/doctest.h valijson/validator.hpp)
endif()
foreach(wanted ${all_wanted})
  cmake_path(GET wanted PARENT_PATH library)
  find_path(${library}_HEADERS ${wanted} PATHS /usr/include NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH)
  if(NOT ${library}_HEADERS)
    message(FATAL_ERROR "${wanted} is not on this machine: run packaging/install build test")
  endif()
  file(CREATE_LINK ${${library}_HEADERS}/${library} ${headers}/${library} SYMBOLIC)
endforeach()
target_include_directories(cotter_flags SYSTEM INTERFACE ${headers})
add_library(part_fast_float INTERFACE)
add_library(part_json INTERFACE)
add_library(part_doctest INTERFACE)
add_library(part_stb INTERFACE)
target_include_directories(part_stb SYSTEM INTERFACE ${headers}/stb)

part_from_source(part_fmt fmt-9.1.0 src/format.cc src/os.cc INCLUDE include)
part_from_source(part_zlib zlib-1.2.13 adler32.c compress.c crc32.c deflate.c inffast.c inflate.c inftrees.c trees.c
  uncompr.c zutil.c INCLUDE .)
part_from_source(part_libdeflate libdeflate-1.14 lib/utils.c lib/crc32.c lib/arm/cpu_features.c lib/x86/cpu_features.c
  INCLUDE .)
part_from_source(part_utf8proc utf8proc-2.8.0 utf8proc.c INCLUDE .)
target_compile_definitions(part_utf8proc PUBLIC UTF8PROC_STATIC)
part_from_source(part_qrencode qrencode-4.1.1 qrencode.c qrinput.c bitstream.c qrspec.c rsecc.c split.c mask.c mqrspec.c
  mmask.c INCLUDE . DEFINE STATIC_IN_RELEASE=static MAJOR_VERSION=4 MINOR_VERSION=1 MICRO_VERSION=1 VERSION="4.1.1")
part_from_source(part_mbedtls mbedtls-3.6.6 library/md5.c library/sha1.c library/sha256.c library/sha512.c
  library/platform.c library/platform_util.c INCLUDE include)
target_compile_definitions(part_mbedtls PUBLIC MBEDTLS_CONFIG_FILE="${parts_config}/mbedtls_digests.h"
  $<$<BOOL:${WIN32}>:MBEDTLS_PLATFORM_C>)  # there it insists on having its own snprintf
# As Debian 12 builds it, of what core needs. No threads: core has none, and one book has one thread.
part_from_source(part_sqlite sqlite-3.40.1 sqlite3.c INCLUDE . DEFINE SQLITE_ENABLE_FTS5 SQLITE_ENABLE_MATH_FUNCTIONS
  SQLITE_SECURE_DELETE SQLITE_MAX_DEFAULT_PAGE_SIZE=32768 SQLITE_MAX_VARIABLE_NUMBER=250000 SQLITE_USE_URI
  SQLITE_LIKE_DOESNT_MATCH_BLOBS SQLITE_OMIT_LOAD_EXTENSION ${COTTER_SQLITE_DEFINE})
part_from_source(part_exif libexif-0.6.24 libexif/exif-byte-order.c libexif/exif-content.c libexif/exif-data.c
  libexif/exif-entry.c libexif/exif-format.c libexif/exif-gps-ifd.c libexif/exif-ifd.c libexif/exif-loader.c libexif/exif-log.c
  libexif/exif-mem.c libexif/exif-mnote-data.c libexif/exif-tag.c libexif/exif-utils.c
  libexif/apple/exif-mnote-data-apple.c libexif/apple/mnote-apple-entry.c libexif/apple/mnote-apple-tag.c
  libexif/canon/exif-mnote-data-canon.c libexif/canon/mnote-canon-entry.c libexif/canon/mnote-canon-tag.c
  libexif/fuji/exif-mnote-data-fuji.c libexif/fuji/mnote-fuji-entry.c libexif/fuji/mnote-fuji-tag.c
  libexif/olympus/exif-mnote-data-olympus.c libexif/olympus/mnote-olympus-entry.c libexif/olympus/mnote-olympus-tag.c
  libexif/pentax/exif-mnote-data-pentax.c libexif/pentax/mnote-pentax-entry.c libexif/pentax/mnote-pentax-tag.c
  INCLUDE .)
target_include_directories(part_exif SYSTEM PUBLIC ${parts_config})
part_from_source(part_jpeg libjpeg-turbo-2.1.5 jcapimin.c jcapistd.c jccoefct.c jccolor.c jcdctmgr.c jchuff.c jcicc.c
  jcinit.c jcmainct.c jcmarker.c jcmaster.c jcomapi.c jcparam.c jcphuff.c jcprepct.c jcsample.c jctrans.c jdapimin.c
  jdapistd.c jdatadst.c jdatasrc.c jdcoefct.c jdcolor.c jddctmgr.c jdhuff.c jdicc.c jdinput.c jdmainct.c jdmarker.c
  jdmaster.c jdmerge.c jdphuff.c jdpostct.c jdsample.c jdtrans.c jerror.c jfdctflt.c jfdctfst.c jfdctint.c jidctflt.c
  jidctfst.c jidctint.c jidctred.c jquant1.c jquant2.c jutils.c jmemmgr.c jmemnobs.c jaricom.c jcarith.c jdarith.c
  jsimd_none.c INCLUDE .)
target_include_directories(part_jpeg SYSTEM PUBLIC ${parts_config})
part_from_source(part_hpdf libharu-2.3.0 src/hpdf_annotation.c src/hpdf_array.c src/hpdf_binary.c src/hpdf_boolean.c
  src/hpdf_catalog.c src/hpdf_destination.c src/hpdf_dict.c src/hpdf_doc.c src/hpdf_doc_png.c src/hpdf_encoder.c
  src/hpdf_encoder_cns.c src/hpdf_encoder_cnt.c src/hpdf_encoder_jp.c src/hpdf_encoder_kr.c src/hpdf_encoder_utf.c
  src/hpdf_encrypt.c src/hpdf_encryptdict.c src/hpdf_error.c src/hpdf_exdata.c src/hpdf_ext_gstate.c src/hpdf_font.c
  src/hpdf_font_cid.c src/hpdf_font_tt.c src/hpdf_font_type1.c src/hpdf_fontdef.c src/hpdf_fontdef_base14.c
  src/hpdf_fontdef_cid.c src/hpdf_fontdef_cns.c src/hpdf_fontdef_cnt.c src/hpdf_fontdef_jp.c src/hpdf_fontdef_kr.c
  src/hpdf_fontdef_tt.c src/hpdf_fontdef_type1.c src/hpdf_gstate.c src/hpdf_image.c src/hpdf_image_ccitt.c
  src/hpdf_image_png.c src/hpdf_info.c src/hpdf_list.c src/hpdf_mmgr.c src/hpdf_name.c src/hpdf_namedict.c src/hpdf_null.c
  src/hpdf_number.c src/hpdf_objects.c src/hpdf_outline.c src/hpdf_page_label.c src/hpdf_page_operator.c src/hpdf_pages.c
  src/hpdf_pdfa.c src/hpdf_real.c src/hpdf_streams.c src/hpdf_string.c src/hpdf_u3d.c src/hpdf_utils.c src/hpdf_xref.c
  src/hpdf_3dmeasure.c INCLUDE include USES part_zlib)
target_include_directories(part_hpdf SYSTEM PUBLIC ${parts_config})

# libsodium: of its cryptography the signature and what that stands on, in portable C.
set(sodium src/libsodium)
part_from_source(part_sodium libsodium-1.0.18
  ${sodium}/crypto_core/ed25519/ref10/ed25519_ref10.c ${sodium}/crypto_core/salsa/ref/core_salsa_ref.c
  ${sodium}/crypto_core/hchacha20/core_hchacha20.c ${sodium}/crypto_core/hsalsa20/core_hsalsa20.c
  ${sodium}/crypto_core/hsalsa20/ref2/core_hsalsa20_ref2.c
  ${sodium}/crypto_generichash/crypto_generichash.c ${sodium}/crypto_generichash/blake2b/generichash_blake2.c
  ${sodium}/crypto_generichash/blake2b/ref/blake2b-compress-ref.c ${sodium}/crypto_generichash/blake2b/ref/blake2b-ref.c
  ${sodium}/crypto_generichash/blake2b/ref/generichash_blake2b.c
  ${sodium}/crypto_hash/crypto_hash.c ${sodium}/crypto_hash/sha256/hash_sha256.c
  ${sodium}/crypto_hash/sha256/cp/hash_sha256_cp.c ${sodium}/crypto_hash/sha512/hash_sha512.c
  ${sodium}/crypto_hash/sha512/cp/hash_sha512_cp.c
  ${sodium}/crypto_onetimeauth/crypto_onetimeauth.c ${sodium}/crypto_onetimeauth/poly1305/onetimeauth_poly1305.c
  ${sodium}/crypto_onetimeauth/poly1305/donna/poly1305_donna.c
  ${sodium}/crypto_pwhash/argon2/argon2-core.c ${sodium}/crypto_pwhash/argon2/argon2-encoding.c
  ${sodium}/crypto_pwhash/argon2/argon2-fill-block-ref.c ${sodium}/crypto_pwhash/argon2/argon2.c
  ${sodium}/crypto_pwhash/argon2/blake2b-long.c
  ${sodium}/crypto_scalarmult/crypto_scalarmult.c ${sodium}/crypto_scalarmult/curve25519/ref10/x25519_ref10.c
  ${sodium}/crypto_scalarmult/curve25519/scalarmult_curve25519.c
  ${sodium}/crypto_sign/crypto_sign.c ${sodium}/crypto_sign/ed25519/sign_ed25519.c
  ${sodium}/crypto_sign/ed25519/ref10/keypair.c ${sodium}/crypto_sign/ed25519/ref10/open.c
  ${sodium}/crypto_sign/ed25519/ref10/sign.c
  ${sodium}/crypto_stream/chacha20/stream_chacha20.c ${sodium}/crypto_stream/chacha20/ref/chacha20_ref.c
  ${sodium}/crypto_stream/crypto_stream.c ${sodium}/crypto_stream/salsa20/stream_salsa20.c
  ${sodium}/crypto_stream/salsa20/ref/salsa20_ref.c ${sodium}/crypto_stream/xsalsa20/stream_xsalsa20.c
  ${sodium}/crypto_verify/sodium/verify.c ${sodium}/randombytes/randombytes.c
  ${sodium}/randombytes/sysrandom/randombytes_sysrandom.c ${sodium}/sodium/codecs.c ${sodium}/sodium/core.c
  ${sodium}/sodium/runtime.c ${sodium}/sodium/utils.c ${sodium}/sodium/version.c
  INCLUDE ${sodium}/include PRIVATE_INCLUDE ${sodium}/include/sodium
  DEFINE CONFIGURED=1 NATIVE_LITTLE_ENDIAN=1 HAVE_C_VARARRAYS=1 DEV_MODE=0 ${COTTER_SODIUM_DEFINE})
target_include_directories(part_sodium SYSTEM PUBLIC ${parts_config})
target_include_directories(part_sodium PRIVATE ${parts_config}/sodium)
target_compile_definitions(part_sodium PUBLIC SODIUM_STATIC)

# What a photo's or a packet's bytes run through is built for speed where all else is built for size.
foreach(part jpeg libdeflate mbedtls zlib)
  target_compile_options(part_${part} PRIVATE -O2)
endforeach()

option(COTTER_APP "Build the screens" ON)
if(NOT COTTER_APP)
  return()
endif()
if(WIN32)
  include(packaging/cmake/SdlForWindows.cmake)
else()
  include(packaging/cmake/SdlFromSource.cmake)
endif()
part_from_source(part_imgui imgui-1.90.1 imgui.cpp imgui_draw.cpp imgui_tables.cpp imgui_widgets.cpp
  backends/imgui_impl_sdl2.cpp backends/imgui_impl_sdlrenderer2.cpp INCLUDE . backends USES part_sdl)
set_source_files_properties(${parts}/imgui-1.90.1/imgui_draw.cpp PROPERTIES COMPILE_OPTIONS -O2) # bakes the fonts
target_compile_definitions(part_imgui PUBLIC IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_DEMO_WINDOWS)
