#!/bin/bash
# run.sh FOLDER RESULTS SECONDS [NAME PATTERN]: every job of FOLDER/jobs that RESULTS lacks, on all GPUs, none begun that would outlast
# SECONDS. FOLDER holds `jobs`, the bodies and the built `solver`. One JSON line a case is added to RESULTS.
set -u
folder=$1 results=$2 limit=$3 pattern=${4:-.}
begin=$SECONDS
touch "$results"
gpus=$(nvidia-smi -L | wc -l)
export OMP_NUM_THREADS=8
grep -vE '^$' "$folder/jobs" | awk -v p="$pattern" '$3 ~ p' | while read -r cost body name keys; do
  grep -q "\"name\":\"$name\"" "$results" || echo "$cost $body $name $keys"
done > "$folder/queue"

next() { # takes the dearest job that still fits
  exec 9> "$folder/lock"
  flock 9
  local left=$((limit - (SECONDS - begin)))
  job=$(awk -v left=$left -v pace="${PACE:-13}" '$1 * pace + 4 < left { print; exit }' "$folder/queue")
  if [ -n "$job" ]; then grep -vxF "$job" "$folder/queue" > "$folder/queue.new"; mv "$folder/queue.new" "$folder/queue"; fi
  flock -u 9
  [ -n "$job" ]
}

work() { # one GPU
  while next; do
    set -- $job
    shift; local body=$1 name=$2; shift 2
    local line=
    # a case that blows up is run again, slower in lattice units
    line=$(CUDA_VISIBLE_DEVICES=$gpu "$folder/solver" "$folder/$body" "$name" "$@")
    if [ $? = 2 ]; then
      local peak; peak=$(printf '%s\n' "$@" | sed -n 's/^peak=//p')
      line=$(CUDA_VISIBLE_DEVICES=$gpu "$folder/solver" "$folder/$body" "$name" "$@" sponge=150 peak=$(awk "BEGIN { print 0.6 * ${peak:-0.08} }"))
    fi
    [ -n "$line" ] && (flock 8; echo "$line" >&8) 8>> "$results"
  done
}

for gpu in $(seq 0 $((gpus - 1))); do for each in 1 2; do gpu=$gpu work & done; done
wait
echo "$(wc -l < "$results") cases, $(wc -l < "$folder/queue") left, $((SECONDS - begin)) s"
