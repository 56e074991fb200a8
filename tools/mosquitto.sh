#!/bin/sh
# Finds the MQTT broker that the tests of instruments talk to, and prints its path.
# As root on a Debian-like machine a missing one is installed, and not left running;
# else this says what to install.
set -eu

PATH="$PATH:/usr/sbin:/usr/local/sbin"
if command -v mosquitto >/dev/null 2>&1; then
  command -v mosquitto
  exit 0
fi

if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
  echo "installing mosquitto for the tests of instruments" >&2
  apt-get update -qq >&2
  if [ ! -e /usr/sbin/policy-rc.d ]; then
    printf '#!/bin/sh\nexit 101\n' > /usr/sbin/policy-rc.d # no service is begun
    chmod +x /usr/sbin/policy-rc.d
    trap 'rm -f /usr/sbin/policy-rc.d' EXIT
  fi
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends mosquitto >&2
  command -v mosquitto
  exit 0
fi

echo "the tests of instruments need an MQTT broker: install mosquitto (Debian: apt-get install mosquitto)" >&2
exit 1
