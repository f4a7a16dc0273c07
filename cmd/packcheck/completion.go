package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v3"
)

// completionCommand writes what a shell needs to complete commands. The scripts
// know nothing: they hand the line to packcheck and show what it answers.
func completionCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "completion",
		CustomHelpTemplate: `packcheck completion SHELL writes the completion for bash, zsh or fish:

    source <(packcheck completion bash)        in ~/.bashrc
    source <(packcheck completion zsh)         in ~/.zshrc
    packcheck completion fish | source         in config.fish

It completes options, commands, keys and values behind --set, the questions
of ask, the codes of explain and the topics of help. It has no options.
`,
		Action: func(_ context.Context, c *cli.Command) error {
			args := c.Args().Slice()
			if len(args) > 0 && args[0] == forShell {
				return writeWords(std.out, strings.Join(args[1:], " "), std)
			}
			if len(args) == 1 {
				for _, s := range shells() {
					if s.name == args[0] {
						_, err := io.WriteString(std.out, s.script)
						return err
					}
				}
			}
			return fmt.Errorf("completion for which shell? One of %s", strings.Join(shellNames(), ", "))
		},
	}
}

// forShell is what the scripts call packcheck completion with.
const forShell = "words"

// filesToo is the answer that has the shell add names of files.
const filesToo = ":files"

type shell struct{ name, script string }

func shells() []shell {
	return []shell{{"bash", bashScript}, {"zsh", zshScript}, {"fish", fishScript}}
}

func shellNames() []string {
	var names []string
	for _, s := range shells() {
		names = append(names, s.name)
	}
	return names
}

// bash parts words at "=" as well, so only what stands behind it is inserted.
const bashScript = `# Completion of packcheck for bash: source <(packcheck completion bash)
_packcheck() {
  local line="${COMP_LINE:0:COMP_POINT}" word about cur="${COMP_WORDS[COMP_CWORD]}"
  COMPREPLY=()
  while IFS=$'\t' read -r word about; do
    if [ "$word" = ":files" ]; then
      compopt -o filenames 2>/dev/null
      while IFS= read -r word; do COMPREPLY+=("$word"); done < <(compgen -f -- "${cur//[\"\']/}")
      continue
    fi
    case "$line" in *"${word%%=*}="*) word="${word#*=}" ;; esac
    case "$word" in
      *=) compopt -o nospace 2>/dev/null ;;
      *" "*) word="$(printf %q "$word")" ;;
    esac
    COMPREPLY+=("$word")
  done < <(packcheck completion words "$line" 2>/dev/null)
}
complete -F _packcheck packcheck
`

const zshScript = `#compdef packcheck
# Completion of packcheck for zsh: source <(packcheck completion zsh)
_packcheck() {
  local line="${BUFFER[1,CURSOR]}" word about
  local -a plain keys
  while IFS=$'\t' read -r word about; do
    case "$word" in
      :files) _files ;;
      *=) keys+=("$word") ;;
      *) plain+=("$word") ;;
    esac
  done < <(packcheck completion words "$line" 2>/dev/null)
  (( ${#plain} )) && compadd -- "${plain[@]}"
  (( ${#keys} )) && compadd -S '' -- "${keys[@]}"
  return 0
}
(( $+functions[compdef] )) || { autoload -Uz compinit && compinit }
compdef _packcheck packcheck
`

const fishScript = `# Completion of packcheck for fish: packcheck completion fish | source
function __packcheck_words
    set -l words (packcheck completion words (commandline -cp | string collect) 2>/dev/null)
    for word in $words
        if test "$word" = ":files"
            __fish_complete_path (commandline -ct)
        else
            echo $word
        end
    end
end
complete -c packcheck -f -a "(__packcheck_words)"
`
