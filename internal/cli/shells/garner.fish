# fish completion for garner; load it with:  garner completion fish | source
function __garner_candidates
    set -l typed (commandline -opc) (commandline -ct)
    garner complete-line -- $typed[2..-1] 2>/dev/null
end
complete -c garner -a '(__garner_candidates)'
