#!/usr/bin/env bash
# Puts a real VS Code (its server build, from the npm registry) and a real browser (Debian's Chromium) on this machine, into
# a folder outside the checkout. Some minutes and 1 GB the first time; at once when they are there already.
#   install.sh DIR
set -euo pipefail
dir=${1:?a folder to install into}
mkdir -p "$dir"
dir=$(cd "$dir" && pwd)
server_version=4.139.1 # holds Code 1.139
node_version=24.21.0

ready() { [ -x "$dir/code-server" ] && "$dir/code-server" --version >/dev/null 2>&1 && [ -x /usr/bin/chromium ]; }
ready && exit 0

admin() { if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi; }
admin apt-get update -qq
admin env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq \
  chromium libkrb5-dev libx11-dev libxkbfile-dev libsecret-1-dev pkg-config make g++ python3 >/dev/null

new_package() {
  mkdir -p "$1"
  cd "$1"
  [ -f package.json ] || npm init -y >/dev/null
}
arch=$(node -p process.arch)
(new_package "$dir/node" && npm install --no-audit --no-fund "node-linux-$arch@$node_version" >/dev/null)
node_dir="$dir/node/node_modules/node-linux-$arch"
export PATH="$node_dir/bin:$PATH" npm_config_nodedir="$node_dir"

# Install scripts are run only where a native module has to be built.
(new_package "$dir/server" && npm install --no-audit --no-fund --ignore-scripts "code-server@$server_version" >/dev/null)
package="$dir/server/node_modules/code-server"
(cd "$dir/server/node_modules/argon2" && npm run install >/dev/null 2>&1)
(cd "$package/lib/vscode" && npm install --omit=dev --no-audit --no-fund >/dev/null 2>&1)
(cd "$package/lib/vscode/extensions" && npm install --omit=dev --no-audit --no-fund >/dev/null 2>&1)

cat >"$dir/code-server" <<SH
#!/bin/sh
exec "$node_dir/bin/node" "$package/out/node/entry.js" "\$@"
SH
chmod +x "$dir/code-server"
"$dir/code-server" --version
