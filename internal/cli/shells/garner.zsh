#compdef garner
# zsh completion for garner; load it with:  source <(garner completion zsh)
_garner() {
    local -a candidates
    candidates=("${(@f)$(garner complete-line -- "${(@)words[2,CURRENT]}" 2>/dev/null)}")
    if [[ -n "${candidates[1]}" ]]; then
        compadd -- "${candidates[@]}"
    else
        _files
    fi
}
compdef _garner garner
