#!/bin/sh
# Starts systemd as the first process of the Debian in folder $1. Runs in namespaces of its own (unshare -m -p -f -i -u -C).
set -eu
root=$1
mount --make-rprivate /
mount --bind "$root" "$root"
mount -t proc proc "$root/proc"
mount -t sysfs -o ro sysfs "$root/sys"
mount -t tmpfs -o mode=755 tmpfs "$root/dev"
for device in null zero full random urandom tty; do
    touch "$root/dev/$device"
    mount --bind "/dev/$device" "$root/dev/$device"
done
mkdir "$root/dev/pts" "$root/dev/shm"
mount -t devpts -o newinstance,ptmxmode=0666,mode=620,gid=5 devpts "$root/dev/pts"
ln -s pts/ptmx "$root/dev/ptmx"
ln -s /proc/self/fd "$root/dev/fd"
mount -t tmpfs -o mode=755 tmpfs "$root/run"
mount -t tmpfs tmpfs "$root/tmp"
if [ -e /sys/fs/cgroup/cgroup.controllers ]; then
    mount -t cgroup2 cgroup2 "$root/sys/fs/cgroup"
else
    mount -t tmpfs -o mode=755 tmpfs "$root/sys/fs/cgroup"
    for controller in devices memory pids; do
        mkdir "$root/sys/fs/cgroup/$controller"
        mount -t cgroup -o "$controller" cgroup "$root/sys/fs/cgroup/$controller" || true
    done
    mkdir "$root/sys/fs/cgroup/systemd"
    mount -t cgroup -o none,name=systemd cgroup "$root/sys/fs/cgroup/systemd"
fi
exec chroot "$root" /usr/bin/env -i container=tautlog-test PATH=/usr/sbin:/usr/bin:/sbin:/bin /lib/systemd/systemd --system
