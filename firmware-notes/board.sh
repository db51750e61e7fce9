#!/bin/sh
# Makes a Debian board with tautlogd ready for power that goes at any moment: firmware-notes/board.md says what and why.
set -eu

usage() {
    cat <<'TEXT'
Usage: sh board.sh --data UUID=… [--dry-run] [--root FOLDER]

  --data UUID=…   the partition for recordings: ext4, made beforehand, empty or with recordings; never formatted here
  --dry-run       shows what would change, changes nothing
  --root FOLDER   a card or image of the board mounted at FOLDER, instead of this computer

Examples:
  sudo sh board.sh --data UUID=0f3a… --dry-run
  sudo sh board.sh --data UUID=0f3a… --root /mnt/card

A second run changes nothing. To undo: delete the files and the block in /etc/fstab that --dry-run names on a fresh card, give the
line of / and of the boot partition its old options (they stand in /etc/fstab.before-tautlog), restart.
TEXT
}

refuse() {
    echo "board.sh: $*" >&2
    echo "  Nothing was changed." >&2
    exit 3
}

wrong() {
    echo "board.sh: $*" >&2
    usage >&2
    exit 2
}

data=
root=
dry_run=no
while [ $# -gt 0 ]; do
    case "$1" in
        --data | --root)
            [ $# -ge 2 ] || wrong "$1 lacks its value."
            if [ "$1" = --data ]; then data=$2; else root=${2%/}; fi
            shift
            ;;
        --dry-run) dry_run=yes ;;
        --help | -h) usage && exit 0 ;;
        *) wrong "\"$1\" is not known." ;;
    esac
    shift
done
case "$data" in
    UUID=?*) ;;
    *) wrong "--data UUID=… is missing; \`blkid\` shows the partitions' numbers." ;;
esac

work=$(mktemp -d)
mounted=
cleanup() {
    [ -z "$mounted" ] || umount "$work/data" || true
    rm -rf "$work"
}
trap cleanup EXIT INT TERM

# ---- refusals: all before the first change

[ "$(id -u)" = 0 ] || refuse "needs root; start it with sudo."
[ -f "$root/etc/debian_version" ] || refuse "${root:-this computer} is no Debian."
[ -e "$root/usr/lib/systemd/systemd" ] || refuse "${root:-this computer} has no systemd."
[ -e "$root/usr/lib/systemd/system/tautlogd.service" ] || refuse "the package tautlog is not installed there; install it first."
[ -n "$root" ] || ! systemd-detect-virt --quiet --container ||
    refuse "this is a container, whose disks are not its own; give the board's card with --root."
[ -f "$root/etc/fstab" ] || refuse "$root/etc/fstab is missing: it is not known what is mounted as /."
[ "$(awk '$1 !~ /^#/ && $2 == "/" { n++ } END { print n + 0 }' "$root/etc/fstab")" = 1 ] ||
    refuse "$root/etc/fstab needs exactly one line for /."
awk '$1 !~ /^#/ && $2 == "/var/lib/tautlog" && !ours { found = 1 } /^# tautlog: begin/ { ours = 1 } /^# tautlog: end/ { ours = 0 }
    END { exit !found }' "$root/etc/fstab" && refuse "$root/etc/fstab mounts something at /var/lib/tautlog already."

# without blkid's memory of what was: a partition may have been made anew
device=$(blkid --cache-file /dev/null --match-token "$data" --output device) || refuse "no partition $data is there; \`blkid\` shows what is."
[ "$(echo "$device" | wc -l)" = 1 ] || refuse "$data is on several devices: $(echo "$device" | tr '\n' ' '). Take the copies off."
type=$(blkid --probe --match-tag TYPE --output value "$device" || true)
[ "$type" = ext4 ] || refuse "$device is ${type:-not formatted}, not ext4. What is on it stays; choose or make another."
root_device=$(findmnt --noheadings --output SOURCE --target "${root:-/}" || true)
[ "$root_device" != "$device" ] || refuse "$device holds the system itself; recordings need a partition of their own."

folder=$(findmnt --noheadings --output TARGET --source "$device" | head -n 1)
if [ -z "$folder" ]; then
    folder=$work/data
    mkdir "$folder"
    mount -o ro,noload "$device" "$folder" || refuse "$device cannot be mounted."
    mounted=yes
fi
for entry in "$folder"/* "$folder"/.[!.]*; do
    case "${entry##*/}" in
        '*' | '.[!.]*' | lost+found | recordings | .cache) ;;
        *) refuse "$device holds \"${entry##*/}\", which is no recording. Choose an empty partition." ;;
    esac
done

# Recordings under the mount point would be hidden, not lost; but who looks for them would not find them.
if ! grep -q '^# tautlog: begin' "$root/etc/fstab" && [ -d "$root/var/lib/tautlog/recordings" ] &&
    [ -n "$(find "$root/var/lib/tautlog/recordings" -name '*.tautlog*' | head -n 1)" ]; then
    refuse "there are recordings in $root/var/lib/tautlog/recordings already. Stop tautlogd, move them onto $device" \
        "(folder recordings, owner tautlog), then run this again."
fi
# Settings stay on the system's partition, which is read-only: what tears the history cannot touch a limit or a calibration.
case "$(readlink -f "$root/etc/tautlog")" in
    "$(readlink -f "$root/")"*/var/lib/tautlog*) refuse "$root/etc/tautlog leads to the recordings; keep settings apart from history." ;;
esac

# ---- changes

changed=no

# Puts standard input at $1, below the root, if it is not there already.
put() {
    cat >"$work/new"
    if cmp -s "$work/new" "$root$1"; then
        return 0
    fi
    changed=yes
    if [ "$dry_run" = yes ]; then
        echo "would write $root$1:"
        diff -u "$root$1" "$work/new" 2>/dev/null | sed -n '3,$p' | sed 's/^/    /' || true
        [ -e "$root$1" ] || sed 's/^/    + /' "$work/new"
        return 0
    fi
    echo "writing $root$1"
    mkdir -p "$(dirname "$root$1")"
    cp "$work/new" "$root$1.tautlog-new"
    chmod 0644 "$root$1.tautlog-new"
    sync "$root$1.tautlog-new"
    mv "$root$1.tautlog-new" "$root$1"
}

put /etc/systemd/journald.conf.d/tautlog.conf <<'TEXT'
# board.sh: the journal writes nothing to the card. It is gone when power goes; what counts stands in the recordings.
[Journal]
Storage=volatile
RuntimeMaxUse=16M
TEXT
put /etc/systemd/system.conf.d/tautlog.conf <<'TEXT'
# board.sh: a board that hangs restarts by its own watchdog, if it has one. Many count to 15 s at most.
[Manager]
RuntimeWatchdogSec=14s
TEXT
put /etc/systemd/logind.conf.d/tautlog.conf <<'TEXT'
# board.sh: the ignition sense acts as a power key (board.md): stop in order while the hold-up lasts.
[Login]
HandlePowerKey=poweroff
TEXT
put /etc/systemd/system/tautlogd.service.d/board.conf <<'TEXT'
# board.sh: recordings only onto their own partition, never below its mount point.
[Unit]
AssertPathIsMountPoint=/var/lib/tautlog
TEXT

# What would wake or write the card at times of its own.
for unit in apt-daily.timer apt-daily-upgrade.timer man-db.timer dpkg-db-backup.timer logrotate.timer dphys-swapfile.service; do
    link=/etc/systemd/system/$unit
    if [ "$(readlink "$root$link")" = /dev/null ]; then
        continue
    fi
    changed=yes
    if [ "$dry_run" = yes ]; then
        echo "would mask $unit"
    else
        echo "masking $unit"
        ln -sfn /dev/null "$root$link"
    fi
done

# / and the boot partition read-only, no swap on the card, a block of our own at the end.
awk -v data="$data" '
    /^# tautlog: begin/ { ours = 1 }
    ours { if (/^# tautlog: end/) ours = 0; next }
    $1 ~ /^#/ || NF < 4 { print; next }
    $3 == "swap" { print "# tautlog: no swap on the card: " $0; next }
    $2 == "/" || $2 == "/boot" || $2 == "/boot/firmware" || $2 == "/boot/efi" {
        n = split($4, option, ",")
        kept = "ro"
        for (i = 1; i <= n; i++)
            if (option[i] !~ /^(ro|rw|defaults|noatime|relatime)$/) kept = kept "," option[i]
        $4 = kept ",noatime"
        print
        next
    }
    { print }
    END {
        print "# tautlog: begin, written by board.sh"
        print data " /var/lib/tautlog ext4 noatime,nodev,nosuid,noexec,errors=remount-ro,nofail,x-systemd.device-timeout=20s 0 2"
        print "tmpfs /tmp tmpfs nodev,nosuid,mode=1777,size=64m 0 0"
        print "tmpfs /var/tmp tmpfs nodev,nosuid,mode=1777,size=16m 0 0"
        print "tmpfs /var/log tmpfs nodev,nosuid,noexec,mode=0755,size=16m 0 0"
        print "# tautlog: end"
    }' "$root/etc/fstab" >"$work/fstab"
if ! cmp -s "$work/fstab" "$root/etc/fstab" && [ ! -e "$root/etc/fstab.before-tautlog" ] && [ "$dry_run" = no ]; then
    cp -p "$root/etc/fstab" "$root/etc/fstab.before-tautlog"
fi
put /etc/fstab <"$work/fstab"

if [ "$changed" = no ]; then
    echo "nothing to do: the board is as it should be."
elif [ "$dry_run" = yes ]; then
    echo "dry run: nothing was changed."
else
    sync
    echo "done. Restart the board, then look: findmnt / /var/lib/tautlog; systemctl status tautlogd"
fi
