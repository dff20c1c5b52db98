#!/bin/sh
# What is done on a fresh system, whose root is $1: `cargo xtask test --long` calls it by way of mmdebstrap.
#   BAYHAND_PACKAGES  the packages, one a line
#   BAYHAND_SOUNDS    the folder of the test speech
#   DISPLAY           a screen, on which somebody waits for the window and closes it
set -eu

inside() {
    chroot "$root" env -i PATH="$PATH" HOME=/root LANG=C.UTF-8 DEBIAN_FRONTEND=noninteractive DISPLAY="$DISPLAY" "$@"
}

root=$1
mkdir "$root/tmp/packages"
echo "$BAYHAND_PACKAGES" | while read -r package; do cp "$package" "$root/tmp/packages/"; done

inside apt-get update
inside sh -c 'apt-get install --yes --no-install-recommends /tmp/packages/*.deb'
inside sh -c 'dpkg --verify bayhand && ldd /usr/bin/bayhand /usr/bin/bayhand-cli | (! grep "not found")'

# A whole job on the simulated car, and its record.
inside bayhand-cli practice --seed 1 --into /tmp/jobs.db >"$root/tmp/job.log"
inside bayhand-cli verify /tmp/jobs.db

# The model is found where its package put it.
if [ -e "$root/usr/share/bayhand" ]; then
    cp "$BAYHAND_SOUNDS/voice3-c03.flac" "$root/tmp/said.flac"
    said='{"audio":"/tmp/said.flac","expect":{"phrases":["confirm","fault found"],"reading":true}}'
    echo "$said" | inside bayhand-cli hear | grep '"phrase":"confirm"'
fi

inside timeout 120 bayhand

inside sh -c 'apt-get purge --yes "bayhand*"'
for gone in usr/bin/bayhand usr/share/applications/bayhand.desktop usr/share/bayhand; do
    test ! -e "$root/$gone"
done
