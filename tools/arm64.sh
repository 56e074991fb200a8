#!/bin/sh
# Sees that programs for 64-bit ARM can be run, so that the table is held to the same
# bits on another kind of processor. As root on a Debian-like machine the emulator is
# installed where it is missing; else this says what to install.
set -eu

if command -v qemu-aarch64 >/dev/null 2>&1; then
  exit 0
fi

if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
  echo "installing an emulator for the test on another processor" >&2
  apt-get update -qq >&2
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends qemu-user >&2
  exit 0
fi

echo "the test on another processor needs qemu-aarch64 (Debian: apt-get install qemu-user)" >&2
exit 1
