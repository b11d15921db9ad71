#!/usr/bin/env bash
# Makes a Debian package of a folder that was published for linux-x64 or linux-arm64:
#   make_deb.sh DIR OUT.deb
set -euo pipefail
[ $# -eq 2 ] && [ -x "$1/HandsFreeStartup" ] || { echo "make_deb.sh DIR OUT.deb: DIR is what dotnet publish made" >&2; exit 2; }
case "$(ls "$1/runtimes")" in
    linux-x64) architecture=amd64 ;;
    linux-arm64) architecture=arm64 ;;
    *) echo "$1 was not published for Linux" >&2; exit 2 ;;
esac
version=$(sed -n 's|.*<Version>\(.*\)</Version>.*|\1|p' "$(dirname "$0")/../../Directory.Build.props")
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT
mkdir -p "$root/DEBIAN" "$root/usr/lib" "$root/usr/bin" "$root/usr/share/doc/handsfree-startup"
cp -r "$1" "$root/usr/lib/handsfree-startup"
mv "$root/usr/lib/handsfree-startup/LICENSE" "$root/usr/share/doc/handsfree-startup/copyright"
ln -s ../lib/handsfree-startup/HandsFreeStartup "$root/usr/bin/handsfree-startup"
chmod -R u=rwX,go=rX "$root"
cat > "$root/DEBIAN/control" <<CONTROL
Package: handsfree-startup
Version: $version
Architecture: $architecture
Maintainer: The founders of HandsFree Startup <founders@handsfree-startup.invalid>
Section: misc
Priority: optional
Installed-Size: $(du -sk "$root" | cut -f1)
Depends: libc6 (>= 2.32), libgomp1, libstdc++6, libssl3t64 | libssl3 | libssl1.1
Recommends: espeak-ng, alsa-utils | pulseaudio-utils
Description: hands-free start-up of gas furnaces, by voice and checklist
 Leads a technician through the start-up of a gas furnace: says each step, hears the readings, keeps the record.
 It helps to forget nothing; local codes, the maker's instructions and licensed practice decide.
CONTROL
dpkg-deb --root-owner-group -Zgzip --build "$root" "$2" >/dev/null
echo "$2: $(du -m "$2" | cut -f1) MiB"
