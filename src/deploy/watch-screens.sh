#!/bin/sh
# Starts the browser of a screen again that has stopped telling the server that it lives. Run once a minute by
# tooth-table-watch.timer. A screen that beats writes DATA_DIR/screens/NAME.json (every 30 s): an old one, or one in which
# the server says that the page no longer answers, counts here.
# Only screens of this machine, only if the server answers, and only a browser that has had time to come up.
set -eu

silent_min=3
data="${DATA_DIR:-/var/lib/tooth-table}"

# without a server no screen can beat, and a fresh browser would not help
curl --silent --max-time 10 --output /dev/null "http://localhost:${PORT:-4173}/healthz" || exit 0

for file in "$data"/screens/*.json; do
	[ -n "$(find "$file" -mmin "+$silent_min" 2>/dev/null)" ] ||
		grep --quiet '"restart_browser":true' "$file" 2>/dev/null || continue
	name=$(basename "$file" .json)
	case "$name" in *[!a-z0-9-]*) continue ;; esac
	unit="tooth-table-screen@$name.service"
	systemctl is-active --quiet "$unit" || continue
	# seconds since the machine started, now and when the browser was started
	now=$(cut -d. -f1 /proc/uptime)
	since=$(($(systemctl show --value --property=ActiveEnterTimestampMonotonic "$unit") / 1000000))
	[ $((now - since)) -gt $((silent_min * 60)) ] || continue
	echo "The screen \"$name\" no longer answers: its browser is started again."
	systemctl restart "$unit"
done
