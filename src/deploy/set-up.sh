#!/bin/sh
# Sets up Tooth Table on a bare Debian 13 machine, from a copy of the project. Run again after an update: it changes
# only what has to change, and never the content folder, the settings or the data.
#
#   sudo src/deploy/set-up.sh                    the server alone
#   sudo src/deploy/set-up.sh --screen wall      the server, and this machine's screen under the name "wall"
#   sudo src/deploy/set-up.sh --screen wall --address http://server.museum.example:4173
#                                                the screen alone; the server is another machine
#   --printer                                    lets a teacher print on this screen
#   --dry-run                                    says what it would do
set -eu

screen='' address='' printer='' dry='' server=yes
while [ $# -gt 0 ]; do
	case "$1" in
	--screen) screen="${2:-}" && shift ;;
	--address) address="${2:-}" && server='' && shift ;;
	--printer) printer=yes ;;
	--dry-run) dry=yes ;;
	*)
		sed -n '2,/^set -eu/{s/^# \{0,1\}//;/^set -eu/d;p}' "$0" >&2
		exit 2
		;;
	esac
	shift
done

say() { echo "== $*"; }
stop() {
	echo "$*" >&2
	exit 1
}
# runs a command, or says it
do_it() { if [ -n "$dry" ]; then echo "   $*"; else "$@"; fi; }
# writes standard input to a file, or says so; $1 mode, $2 file
put() { if [ -n "$dry" ]; then cat >/dev/null && echo "   write $2"; else install -D -m "$1" /dev/stdin "$2"; fi; }

case "$screen" in *[!a-z0-9-]*) stop "--screen $screen: a name has small letters, digits and hyphens only." ;; esac
case "$address" in '' | http://?* | https://?*) ;; *) stop "--address $address: begin it with http:// or https://." ;; esac
[ -z "$address" ] || [ -n "$screen" ] || stop "--address needs --screen NAME: without a server here there is only a screen to set up."
[ -n "$dry" ] || [ "$(id -u)" = 0 ] || stop "This installs programs and services: run it as root (sudo)."
[ -f /etc/debian_version ] || stop "This is not Debian. The units and the policy in this folder can be put in place by hand, see DEVELOPERS.md."

here=$(cd "$(dirname "$0")" && pwd)
project=$(cd "$here/../.." && pwd)
export DEBIAN_FRONTEND=noninteractive

say "Programs"
packages='ca-certificates curl'
[ -z "$server" ] || command -v node >/dev/null || packages="$packages nodejs"
[ -z "$server" ] || command -v npm >/dev/null || packages="$packages npm"
[ -z "$screen" ] || packages="$packages chromium cage libpam-systemd"
do_it apt-get update -qq
# shellcheck disable=SC2086
do_it apt-get install -y -qq --no-install-recommends $packages
if [ -n "$server" ] && command -v node >/dev/null; then
	node -e 'const [a, b] = process.versions.node.split(".").map(Number); process.exit(a > 20 || (a === 20 && b >= 19) ? 0 : 1)' ||
		stop "Node.js $(node -v) is too old: 20.19 or newer is needed. Debian 13 has it; on an older Debian install it from nodejs.org."
fi

say "Users"
if [ -n "$server" ] && ! id tooth-table >/dev/null 2>&1; then
	do_it useradd --system --home-dir /var/lib/tooth-table --shell /usr/sbin/nologin tooth-table
fi
if [ -n "$screen" ] && ! id tooth-screen >/dev/null 2>&1; then
	do_it useradd --create-home --shell /usr/sbin/nologin tooth-screen
	for group in video input render; do
		! getent group "$group" >/dev/null || do_it usermod --append --groups "$group" tooth-screen
	done
fi

say "The program, in /opt/tooth-table"
if [ "$project" != /opt/tooth-table ]; then
	do_it mkdir -p /opt/tooth-table
	for part in package.json package-lock.json .npmrc tsconfig.json svelte.config.js vite.config.ts README.md DEVELOPERS.md src static content; do
		[ ! -e "$project/$part" ] || { do_it rm -rf "/opt/tooth-table/$part" && do_it cp -R "$project/$part" /opt/tooth-table/; }
	done
fi
do_it chown -R root:root /opt/tooth-table
do_it chmod -R u=rwX,go=rX /opt/tooth-table
if [ -n "$server" ]; then
	do_it env -C /opt/tooth-table node -e 'import("./src/scripts/setup.mjs").then((it) => { it.ensureInstalled(); it.ensureBuilt(); })'

	say "Content in /srv/tooth-table/content, data in /var/lib/tooth-table, settings in /etc/tooth-table/settings"
	if [ ! -e /srv/tooth-table/content ]; then
		do_it mkdir -p /srv/tooth-table
		do_it cp -R /opt/tooth-table/content /srv/tooth-table/content
	fi
	# the desk writes there, and so may whoever is in the group tooth-table
	do_it chown -R tooth-table:tooth-table /srv/tooth-table/content
	do_it find /srv/tooth-table/content -type d -exec chmod 2775 {} +
	do_it install -d -m 0750 -o tooth-table -g tooth-table /var/lib/tooth-table
	[ -e /etc/tooth-table/settings ] || put 0640 /etc/tooth-table/settings <"$here/settings"
	do_it chgrp tooth-table /etc/tooth-table/settings
fi

say "Services"
if [ -n "$server" ]; then
	put 0644 /etc/systemd/system/tooth-table.service <"$here/tooth-table.service"
	do_it systemctl daemon-reload
	do_it systemctl enable tooth-table.service
	do_it systemctl restart tooth-table.service
fi
if [ -n "$screen" ]; then
	shown="${address:-http://localhost:4173}"
	sed -e "s#http://localhost:4173#$shown#" ${printer:+-e 's/"PrintingEnabled": false/"PrintingEnabled": true/'} \
		"$here/chromium-policy.json" | put 0644 /etc/chromium/policies/managed/tooth-table.json
	printf 'TOOTH_TABLE_ADDRESS=%s\n' "$shown" | put 0644 /etc/tooth-table/screen
	units="tooth-table-screen@.service tooth-table-night.service tooth-table-night.timer"
	# the server's data tell which screen is silent: only the server's own machine can look
	[ -z "$server" ] || units="$units tooth-table-watch.service tooth-table-watch.timer"
	for unit in $units; do put 0644 "/etc/systemd/system/$unit" <"$here/$unit"; done
	do_it systemctl daemon-reload
	do_it systemctl disable getty@tty1.service
	do_it systemctl enable "tooth-table-screen@$screen.service" tooth-table-night.timer ${server:+tooth-table-watch.timer}
	do_it systemctl restart "tooth-table-screen@$screen.service" tooth-table-night.timer ${server:+tooth-table-watch.timer}
fi

say "Done."
[ -z "$server" ] || echo "The exhibit: http://localhost:4173   The desk: http://localhost:4173/desk (choose a passphrase there)"
[ -z "$server" ] || echo "What it says: journalctl -u tooth-table -f   Its health: curl http://localhost:4173/healthz"
[ -z "$screen" ] || echo "The screen: systemctl status tooth-table-screen@$screen"
