#!/bin/sh
# Opens the exhibit on a gallery screen: screen.sh NAME, the name that content/screens.yaml gives it.
# Settings: TOOTH_TABLE_ADDRESS (default http://localhost:4173), TOOTH_TABLE_BROWSER (default chromium),
# TOOTH_TABLE_BROWSER_FLAGS (more switches, for example --force-device-scale-factor=1).
set -eu

name="${1:-}"
case "$name" in
'' | *[!a-z0-9-]*)
	echo "Usage: screen.sh NAME, where NAME has small letters, digits and hyphens only, as in content/screens.yaml." >&2
	exit 2
	;;
esac
address="${TOOTH_TABLE_ADDRESS:-http://localhost:4173}"
browser="${TOOTH_TABLE_BROWSER:-chromium}"
home="${XDG_STATE_HOME:-$HOME/.local/state}/tooth-table/$name"
mkdir -p "$home"

# The browser is opened when there is something to show: its own error page must never stand in the gallery.
said=''
until curl --fail --silent --max-time 5 --output /dev/null "$address/healthz"; do
	[ -n "$said" ] || echo "Waiting for $address ..." >&2
	said=yes
	sleep 2
done

# Not incognito: what staff measured with a card (life size) is kept in this profile, and nothing of a visitor is.
# --user-data-dir            a profile of this screen's own
# --noerrdialogs, --hide-crash-restore-bubble   nothing to dismiss after a power cut
# --disable-pinch, --pull-to-refresh=0, OverscrollHistoryNavigation   no zoom, reload or "back" by a finger
# --password-store=basic     no question for a keyring
# Never --no-sandbox.
# shellcheck disable=SC2086
exec "$browser" \
	--kiosk \
	--user-data-dir="$home" \
	--no-first-run \
	--no-default-browser-check \
	--noerrdialogs \
	--hide-crash-restore-bubble \
	--disable-pinch \
	--pull-to-refresh=0 \
	--touch-events=enabled \
	--disable-features=OverscrollHistoryNavigation \
	--disable-component-update \
	--disable-background-networking \
	--disable-sync \
	--disable-breakpad \
	--disk-cache-size=104857600 \
	--password-store=basic \
	--ozone-platform=wayland \
	${TOOTH_TABLE_BROWSER_FLAGS:-} \
	"$address/?screen=$name"
