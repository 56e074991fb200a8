#!/bin/sh
# Finds the browser that the tests of the pages drive, and prints its path. As
# root on a Debian-like machine a missing one is installed; else this says what to
# install. CHROMIUM names another browser of the same family.
set -eu

for name in ${CHROMIUM:-} chromium chromium-browser google-chrome google-chrome-stable; do
  if command -v "$name" >/dev/null 2>&1; then
    command -v "$name"
    exit 0
  fi
done

if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
  echo "installing chromium for the tests of the pages" >&2
  apt-get update -qq >&2
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium fonts-noto-core >&2
  command -v chromium
  exit 0
fi

echo "the tests of the pages need a browser: install chromium (Debian: apt-get install chromium)," >&2
echo "or name one that is there: CHROMIUM=/path/to/it make test" >&2
exit 1
