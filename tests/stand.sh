# Shared by the scripts that test the built program. Sourced from the source folder; $1 is the
# build folder. A test that fails says what was expected and ends the script.
set -uo pipefail
standbook=$(realpath "$1")/standbook
stand=$(mktemp -d)
trap 'rm -rf "$stand"' EXIT

# expect STATUS WORDS COMMAND…: the exit status, and words that its answer must hold (stdout and
# stderr together; "" for none wanted).
expect() {
    local status=$1 words=$2 got
    shift 2
    answer=$("$@" 2>&1 </dev/null)
    got=$?
    [ $got -eq "$status" ] ||
        { echo "FAULT: \`$*\` ended with $got instead of $status:"; echo "$answer"; exit 1; }
    [ -z "$words" ] || grep -qF -- "$words" <<<"$answer" ||
        { echo "FAULT: \`$*\` does not say \`$words\`:"; echo "$answer"; exit 1; }
}

# has WORDS…: the last answer holds each of them.
has() {
    local words
    for words in "$@"; do
        grep -qF -- "$words" <<<"$answer" ||
            { echo "FAULT: \`$words\` is not said:"; echo "$answer"; exit 1; }
    done
}

# not_said WORDS: the last answer does not hold them.
not_said() {
    if grep -qF -- "$1" <<<"$answer"; then
        echo "FAULT: \`$1\` is said:"; echo "$answer"; exit 1
    fi
}
