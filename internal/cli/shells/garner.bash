# bash completion for garner; load it with:  source <(garner completion bash)
_garner() {
    local candidates
    COMPREPLY=()
    mapfile -t candidates < <(garner complete-line -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
    COMPREPLY=("${candidates[@]}")
    if [ ${#COMPREPLY[@]} -eq 0 ]; then
        mapfile -t COMPREPLY < <(compgen -f -- "${COMP_WORDS[COMP_CWORD]}")
    fi
}
complete -o filenames -F _garner garner
