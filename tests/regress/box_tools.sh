#!/bin/bash
# Keys, signatures and bags of the box held against OpenSSH, unzip, coreutils and Python's zipfile, both ways.
# usage: box_tools.sh BOX_TOOL
set -euo pipefail
box=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"

step() { echo "--- $*"; }
refused() { # expected words, command…: exits 1 and says them
    local words=$1 code=0
    shift
    "$@" > said 2>&1 || code=$?
    [[ $code -eq 1 ]] || { echo "exit $code, not 1: $*"; cat said; exit 1; }
    grep -q -- "$words" said || { echo "unexpected words from: $*"; cat said; exit 1; }
}

step "a key of ours, read by ssh-keygen"
"$box" key device_key "tech's phone" > facts
[[ $(stat -c %a device_key) == 600 ]]
[[ $(cat device_key.pub) == "$(head -1 facts)" ]]
[[ $(ssh-keygen -y -f device_key) == "$(head -1 facts)" ]]
[[ $(ssh-keygen -l -f device_key.pub | cut -d ' ' -f 2) == "$(tail -1 facts)" ]]
"$box" key device_key "another comment" | cmp - facts

step "a key of ssh-keygen, read by us, and kinds of key that are not"
ssh-keygen -q -t ed25519 -N '' -C 'from elsewhere' -f other_key
[[ $("$box" key other_key '' | head -1) == "$(cat other_key.pub)" ]]
ssh-keygen -q -t ecdsa -N '' -f ecdsa_key
refused "not an unencrypted ed25519 key" "$box" key ecdsa_key ''
ssh-keygen -q -t ed25519 -N 'secret' -f locked_key
refused "not an unencrypted ed25519 key" "$box" key locked_key ''

step "signatures, ours checked by ssh-keygen and its checked by us"
printf 'a message\n' > message
"$box" sign device_key cotter-packet message > ours.sig
ssh-keygen -q -Y check-novalidate -n cotter-packet -s ours.sig < message
echo "tech namespaces=\"cotter-packet\" $(cat device_key.pub)" > allowed
ssh-keygen -q -Y verify -f allowed -I tech -n cotter-packet -s ours.sig < message
! ssh-keygen -q -Y check-novalidate -n cotter-packet -s ours.sig <<< 'another message' 2> /dev/null || exit 1
ssh-keygen -q -Y sign -f device_key -n cotter-packet message
cmp ours.sig message.sig # ed25519 leaves no freedom: the very same signature
ssh-keygen -q -Y sign -f other_key -n cotter-packet < message > theirs.sig
[[ $("$box" verify theirs.sig cotter-packet message | tail -1) == $(ssh-keygen -l -f other_key.pub | cut -d ' ' -f 2) ]]
ssh-keygen -q -Y sign -f other_key -n file < message > purpose.sig
refused "another purpose" "$box" verify purpose.sig cotter-packet message
ssh-keygen -q -Y sign -f other_key -n cotter-packet -O hashalg=sha256 < message > short.sig
refused "with sha512" "$box" verify short.sig cotter-packet message
ssh-keygen -q -Y sign -f ecdsa_key -n cotter-packet < message > ecdsa.sig
refused "by an ed25519 key" "$box" verify ecdsa.sig cotter-packet message

step "a packet of ours, opened by unzip, sha256sum and ssh-keygen"
head -c 300000 /dev/urandom > 'one.jpg'
printf 'a,b\n' > 'two.csv'
"$box" seal 2026-05-14_NUR-07_3f9c1a2b_r1.zip device_key one.jpg two.csv
"$box" check 2026-05-14_NUR-07_3f9c1a2b_r1.zip > verdict
[[ $(cat verdict) == valid ]]
unzip -tq 2026-05-14_NUR-07_3f9c1a2b_r1.zip
unzip -q 2026-05-14_NUR-07_3f9c1a2b_r1.zip -d unpacked
python3 -m zipfile -t 2026-05-14_NUR-07_3f9c1a2b_r1.zip
"$box" check unpacked/2026-05-14_NUR-07_3f9c1a2b_r1/ | grep -qx valid
(
    cd unpacked/*/
    sha256sum --quiet --strict -c manifest-sha256.txt
    sha256sum --quiet --strict -c tagmanifest-sha256.txt
    ssh-keygen -q -Y verify -f "$work/allowed" -I tech -n cotter-packet -s tagmanifest-sha256.txt.sig < tagmanifest-sha256.txt
    cmp data/photos/one.jpg "$work/one.jpg"
)

step "the same files in an archive by another program are told from ours"
python3 - 2026-05-14_NUR-07_3f9c1a2b_r1.zip again.zip << 'PY'
import sys, zipfile
with zipfile.ZipFile(sys.argv[1]) as old, zipfile.ZipFile(sys.argv[2], "w", zipfile.ZIP_DEFLATED) as new:
    for info in old.infolist():
        new.writestr(info.filename, old.read(info))
PY
unzip -tq again.zip
refused "not as Cotter writes them" "$box" check again.zip

step "bags of another program: checksums by coreutils, archives by Python"
mkdir -p bag/data/sub
printf 'alpha' > bag/data/a.txt
printf 'beta' > 'bag/data/sub/b c.txt'
printf 'BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n' > bag/bagit.txt
printf 'Payload-Oxum: 9.2\n' > bag/bag-info.txt
(cd bag && find data -type f | sort | tr '\n' '\0' | xargs -0 md5sum > manifest-md5.txt)
(cd bag && md5sum bagit.txt bag-info.txt manifest-md5.txt > tagmanifest-md5.txt)
"$box" check bag > verdict
grep -qx 'valid with warnings' verdict
printf 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n' > bag/bagit.txt
rm bag/*-md5.txt
printf 'full' > bag/data/100%.txt
printf 'Payload-Oxum: 13.3\n' > bag/bag-info.txt
(cd bag && find data -type f | sort | tr '\n' '\0' | xargs -0 sha512sum -b | sed 's/%/%25/' > manifest-sha512.txt)
"$box" check bag | grep -qx 'valid with warnings' # for the '*' of sha512sum -b
sed -i 's/ \*/  /' bag/manifest-sha512.txt
"$box" check bag | grep -qx valid
python3 - << 'PY'
import io, pathlib, zipfile
paths = sorted(p for p in pathlib.Path("bag").rglob("*"))
def fill(target, method, folders, **how):
    with zipfile.ZipFile(target, "w", method, **how) as z:
        for p in paths:
            if p.is_file() or folders:
                z.write(p)
fill("stored.zip", zipfile.ZIP_STORED, True)
fill("deflated.zip", zipfile.ZIP_DEFLATED, False)
class Pipe(io.RawIOBase):  # cannot seek: sizes go into descriptors behind the data
    def __init__(self, path): self.out = open(path, "wb")
    def writable(self): return True
    def write(self, piece): return self.out.write(piece)
    def close(self): self.out.close()
pipe = Pipe("piped.zip")
fill(pipe, zipfile.ZIP_DEFLATED, True)
pipe.close()
with zipfile.ZipFile("forced64.zip", "w", zipfile.ZIP_DEFLATED) as z:
    for p in paths:
        if p.is_file():
            with z.open(str(p), "w", force_zip64=True) as out:
                out.write(p.read_bytes())
fill("bzip2.zip", zipfile.ZIP_BZIP2, False)
PY
for name in stored deflated piped forced64; do
    "$box" check $name.zip > verdict || { cat verdict; exit 1; }
    [[ $(cat verdict) == valid ]] || { echo "$name.zip:"; cat verdict; exit 1; }
done
refused "packed by method 12" "$box" check bzip2.zip

step "links in a bag"
ln -s /etc/passwd bag/data/link
refused "data/link: it is a link" "$box" check bag
echo "all as it should be"
