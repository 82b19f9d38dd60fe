#!/usr/bin/env bash
# Installs the Debian programs that the tests under tests/outside/ compare with; does nothing where they are there already.
set -euo pipefail

declare -A package_of=([ngspice]=ngspice [qpdf]=qpdf [pdftotext]=poppler-utils [soffice]=libreoffice-calc-nogui)
missing=()
for program in "${!package_of[@]}"; do
  command -v "$program" >/dev/null 2>&1 || missing+=("${package_of[$program]}")
done
if [ "${#missing[@]}" -eq 0 ]; then
  exit 0
fi
if ! command -v apt-get >/dev/null 2>&1; then
  echo "These programs are needed and can't be installed without apt-get: ${missing[*]}" >&2
  exit 1
fi
root=()
if [ "$(id -u)" -ne 0 ]; then
  root=(sudo)
fi
"${root[@]}" apt-get update -qq
DEBIAN_FRONTEND=noninteractive "${root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}"
