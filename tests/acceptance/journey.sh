#!/bin/sh
# Runs a script in the real program on a fresh folder of visits: journey.sh PROGRAM SCRIPT
set -eu
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$folder"
"$1" --demo --data "$folder" --size 640x400 --px-per-mm 2.95 --draws 60 --script "$2"
