# Completion of mainbore for bash.
# Made from the program's option table by tests/docs/pages.cpp: not to be edited.

# What stands behind a command: its commands, its operands, its options as "once|many VALUE NAME...".
_mainbore_command() {
  commands='' operands=() options=()
  case $1 in
    'mainbore')
      commands='plan batch explain identify trial table rules schema record new'
      options=(
        'once - -h --help'
        'once - --version'
      )
      ;;
    'mainbore plan')
      operands=('JOB')
      options=(
        'once - -h --help'
        'many PATH=VALUE --set'
        'once text|json|html|calc|calc-html --format'
        'once - --why'
        'once - --materials'
        'once - --steps'
        'once - --full'
        'once - --what-if'
        'once en|es --language'
        'once FILE --approved'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
    'mainbore batch')
      operands=('ORDERS...')
      options=(
        'once - -h --help'
        'once csv|ndjson|json|geojson --in'
        'once text|ndjson|csv|html|geojson --format'
        'once DIR --sheets'
        'once en|es --language'
        'once DAYS --days'
        'once - --full'
        'once - --decisions'
        'once FILE --map'
        'many COLUMNS|all --keep'
        'once - --columns'
        'once - --all'
        'once comma|tab|semicolon --delimiter'
        'once - --no-rows'
        'once hold|office|no-go|unreadable|never --fail-on'
        'once N --jobs'
        'once FILE --approved'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
      )
      ;;
    'mainbore explain')
      operands=('CODE')
      options=(
        'once - -h --help'
        'once - --list'
      )
      ;;
    'mainbore identify')
      options=(
        'once - -h --help'
        'once LENGTH --circumference'
        'once LENGTH --od'
        'once LENGTH --wall'
        'once YEAR --installed'
        'once yes|no --magnet'
        'once ring|dull --sound'
        'once STYLE --joint'
        'once CONTENT --carries'
        'once text|json --format'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
    'mainbore trial')
      options=(
        'once - -h --help'
        'many TRIAL --trial'
        'once NUMBER --threads'
        'once TURNS --wrench'
        'once THREADS --showing'
        'once NUMBER --least'
        'once text|json --format'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
    'mainbore table')
      options=(
        'once - -h --help'
        'many MATERIAL --material'
        'once SIZE --from'
        'once SIZE --to'
        'once - --all-sizes'
        'once THREAD --thread'
        'once PRESSURE --pressure'
        'once JOB --machine'
        'once text|csv|json|html --format'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
    'mainbore rules')
      operands=('ACTION' 'SET...')
      options=(
        'once - -h --help'
        'once text|json --format'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
    'mainbore schema')
      operands=('WHAT')
      options=(
        'once - -h --help'
        'once DIR --data'
        'once FILE -o --output'
      )
      ;;
    'mainbore record')
      operands=('JOB' 'READINGS')
      options=(
        'once - -h --help'
        'many NAME=VALUE --set'
        'once LEDGER --append'
        'once LEDGER --export'
        'once ORDER --order'
        'once LEDGER --tools'
        'once text|json|csv|geojson --format'
        'once en|es --language'
        'once FILE --approved'
        'once us|si --units'
        'many FILE --rules'
        'once DIR --data'
        'once FILE -o --output'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
    'mainbore new')
      operands=('JOB')
      options=(
        'once - -h --help'
        'once - --replace'
        'once en|es --language'
        'once FILE --settings'
        'once - --no-settings'
      )
      ;;
  esac
}

# What stands for a value: words, or the kind of file.
_mainbore_values() {
  case $1 in
    *'|'*) IFS='|' read -ra words <<< "$1" ;;
    'FILE' | 'JOB' | 'LEDGER' | 'ORDERS' | 'READINGS' | 'SET') kind=file ;;
    'DIR') kind=directory ;;
    'ACTION')
      words=(
        'check'
        'show'
        'diff'
      )
      ;;
    'CODE')
      words=(
        'identity.not-water'
        'identity.unknown'
        'identity.unconfirmed'
        'main.not-in-catalogue'
        'main.class-unknown'
        'main.class-not-made'
        'main.class-word'
        'main.by-recollection'
        'main.size-metric'
        'main.year-contradicts'
        'main.not-yet-laid'
        'main.od-contradicts'
        'main.od-unsettled'
        'main.od-unknown'
        'main.readings-disagree'
        'main.wall-impossible'
        'main.wall-thin'
        'main.wall-unmeasured'
        'main.condition-unseen'
        'main.condition-pitted'
        'main.condition-poor'
        'main.encased'
        'main.curved'
        'main.curve-unknown'
        'main.temperature-outside'
        'main.temperature-unmeasured'
        'main.freezing'
        'service.not-smaller'
        'direct.not-allowed'
        'direct.over-maximum'
        'direct.no-rule'
        'direct.few-threads'
        'direct.thin-wall'
        'direct.marginal-threads'
        'direct.recalled-thread'
        'direct.thread-unknown'
        'direct.wrong-thread'
        'direct.hole-too-large'
        'direct.wall-unknown'
        'saddle.not-allowed'
        'saddle.over-maximum'
        'saddle.no-rule'
        'saddle.hole-too-large'
        'saddle.by-engineer'
        'section.too-little-left'
        'several.need-room'
        'several.no-room'
        'several.too-many'
        'several.not-taken'
        'sleeve.not-allowed'
        'sleeve.over-maximum'
        'sleeve.no-rule'
        'sleeve.to-be-chosen'
        'method.not-as-asked'
        'method.none'
        'pressure.over-pipe-rating'
        'pressure.over-feed-limit'
        'pressure.over-machine-rating'
        'pressure.over-stop-rating'
        'pressure.over-saddle-rating'
        'pressure.over-wet-tap-limit'
        'pressure.surge-over-rating'
        'pressure.surge-over-fitting'
        'pressure.rating-unknown'
        'pressure.too-warm'
        'pressure.needs-regulator'
        'pressure.low-over-line'
        'pressure.system-low'
        'machine.unspecified'
        'machine.wrong-size'
        'machine.no-powered-feed'
        'machine.figures-missing'
        'machine.no-saddle'
        'machine.gasket-small'
        'machine.figures-wrong'
        'machine.stud-overloaded'
        'machine.chain-short'
        'machine.travel-short'
        'machine.reach-unknown'
        'machine.valve-not-clear'
        'machine.tool-strikes-far-wall'
        'machine.push-by-hand'
        'machine.chain-ovals-pipe'
        'makeup.by-trial'
        'makeup.trial-off'
        'place.not-looked'
        'place.moved'
        'place.no-room'
        'place.clock'
        'place.stagger'
        'place.defect-near'
        'place.other-line'
        'value.recalled'
        'service.size-not-made'
        'service.not-tabulated'
        'service.existing-lead'
        'service.existing-galvanized'
        'service.not-checked'
        'service.code-unnamed'
        'service.fixture-unknown'
        'service.curve-unread'
        'service.starved'
        'service.too-high'
        'service.too-fast'
        'service.meter-over'
        'service.meter-continuous'
        'service.line-small'
        'clean.stock-too-weak'
        'clean.cannot-scour'
        'clean.as-main'
        'pit.not-checked'
        'pit.not-located'
        'pit.soil-not-type-a'
        'pit.claimed-undisturbed'
        'pit.not-examined'
        'pit.protective-system'
        'pit.engineer'
        'pit.distress'
        'pit.water'
        'pit.egress'
        'pit.atmosphere'
        'pit.guardrail'
        'pit.spoil-too-near'
        'pit.sewer-near'
        'pit.main-hangs'
        'main.not-tapped'
        'main.perhaps-not-tapped'
        'season.closed'
        'season.date-unknown'
        'place.cover'
        'place.cover-unknown'
        'service.tap-small'
        'rules.looser'
        'pressure.over-line-rating'
        'order.fact-unread'
        'rules.consent'
        'rules.consent-unnamed'
        'several.over-maximum'
        'service.tap-too-fast'
        'service.meter-share'
        'service.line-against-tap'
        'sleeve.too-small'
        'sleeve.hole-too-large'
        'approved.none-fits'
        'approved.no-tool-fits'
        'service.cover'
        'service.cover-unknown'
        'service.line-near'
        'service.line-near-unknown'
        'service.line-close'
        'main.air-cold'
        'main.air-unknown'
        'service.dwellings-size'
        'service.dwellings-unknown'
        'service.dwellings-unlisted'
        'service.premises'
        'service.premises-unknown'
        'json.syntax'
        'json.encoding'
        'json.too-large'
        'call.wrong-usage'
        'data.unreadable'
        'job.duplicate-key'
        'job.unknown-key'
        'job.unknown-value'
        'job.wrong-type'
        'job.no-unit'
        'job.unknown-unit'
        'job.wrong-unit'
        'job.not-a-quantity'
        'job.out-of-range'
        'job.missing'
        'job.contradiction'
        'rules.duplicate-key'
        'rules.unknown-key'
        'rules.unknown-value'
        'rules.wrong-type'
        'rules.wrong-quantity'
        'rules.out-of-range'
        'rules.contradiction'
        'rules.looser-without-reason'
        'rules.missing'
        'csv.quote'
        'csv.too-large'
        'csv.ragged'
        'csv.encoding'
        'csv.header'
        'csv.no-column'
        'map.duplicate-key'
        'map.unknown-key'
        'map.unknown-value'
        'map.wrong-type'
        'map.contradiction'
        'map.missing'
        'order.two-materials'
        'order.not-a-wall'
        'order.out-of-map-range'
        'order.internal-error'
        'order.decimal'
        'order.not-a-feature'
        'order.year'
        'order.day-count'
        'settings.approved-not-given'
        'settings.duplicate-key'
        'settings.rules-not-given'
        'settings.unknown-key'
        'settings.unknown-value'
        'settings.wrong-type'
        'ledger.broken-line'
        'readings.duplicate-key'
        'readings.unknown-key'
        'readings.unknown-value'
        'readings.wrong-type'
        'approved.duplicate-key'
        'approved.missing'
        'approved.unknown-key'
        'approved.unknown-value'
        'approved.wrong-type'
      )
      ;;
    'CONTENT')
      words=(
        'water'
        'unknown'
        'reclaimed water'
        'raw water'
        'sewage'
        'gas'
        'petroleum'
        'other'
      )
      ;;
    'MATERIAL')
      words=(
        'ductile iron'
        'cast iron'
        'PVC'
        'PVCO'
        'polyethylene'
        'asbestos cement'
        'steel'
        'concrete cylinder'
        'galvanized steel'
        'copper'
      )
      ;;
    'NAME=VALUE')
      words=(
        'order='
        'tap_number='
        'date='
        'start='
        'end='
        'line_pressure='
        'od='
        'circumference='
        'wall='
        'pipe_temperature='
        'joint_distance='
        'surge='
        'class='
        'condition='
        'clock='
        'cover='
        'station='
        'tie_1='
        'tie_1_from='
        'tie_2='
        'tie_2_from='
        'longitude='
        'latitude='
        'method='
        'tool='
        'tool_state='
        'stop='
        'tap_depth='
        'hand_turns='
        'wrench_turns='
        'threads_showing='
        'leak_check='
        'coupon='
        'tapped_by='
        'seen_by='
        'remarks='
        'air_temperature='
      )
      ;;
    'PATH=VALUE')
      words=(
        'id='
        'place='
        'date='
        'air_temperature='
        'crew='
        'note='
        'main.material='
        'main.size='
        'main.pressure='
        'main.pressure_low='
        'main.class='
        'main.standard='
        'main.installed='
        'main.od='
        'main.circumference='
        'main.wall='
        'main.condition='
        'main.encased='
        'main.curved='
        'main.temperature='
        'main.surge='
        'main.occasional_surge='
        'main.rating='
        'main.carries='
        'main.cover='
        'main.cover_measured='
        'main.pressurized='
        'nearby[0].what='
        'nearby[0].along='
        'nearby[0].clock='
        'nearby[0].size='
        'service.size='
        'service.thread='
        'service.method='
        'service.clock='
        'service.stop_rating='
        'service.saddle_rating='
        'service.stop_length='
        'service.saddle_height='
        'service.existing='
        'service.meter='
        'service.dwellings='
        'service.premises='
        'service.line.material='
        'service.line.size='
        'service.line.length='
        'service.line.rise='
        'service.line.friction='
        'service.line.c='
        'service.line.elbows='
        'service.line.couplings='
        'service.line.rating='
        'service.line.cover='
        'service.line.gas='
        'service.line.electric='
        'service.line.sewer='
        'service.demand.flow='
        'service.demand.fixture_units='
        'service.demand.fixtures='
        'service.demand.code='
        'service.demand.supply='
        'service.demand.continuous='
        'service.demand.sprinklers='
        'service.demand.sprinkler_flow='
        'service.demand.shared='
        'service.demand.residual='
        'service.trial.depth='
        'service.trial.hand_turns='
        'service.trial.wrench_turns='
        'service.trial.threads_showing='
        'service.trial.date='
        'service.trial.tool='
        'machine.profile='
        'machine.feed='
        'machine.extensions='
        'machine.title='
        'machine.smallest_tap='
        'machine.largest_tap='
        'machine.hand_limit='
        'machine.powered_limit='
        'machine.body_rating='
        'machine.bar_diameter='
        'machine.bar_travel='
        'machine.standoff='
        'machine.valve_height='
        'machine.feed_pitch='
        'machine.adapter_standoff='
        'machine.saddle_od_from='
        'machine.saddle_od_to='
        'machine.chain_length='
        'machine.chain_extension='
        'machine.anchor_offset='
        'machine.anchor_height='
        'machine.chain_thickness='
        'machine.gasket_diameter='
        'machine.stud_diameter='
        'machine.studs='
        'tool.length='
        'tool.lead='
        'tool.insertion_length='
        'sanitary.stock='
        'sanitary.solution='
        'excavation.soil='
        'excavation.strength='
        'excavation.earth='
        'excavation.granular='
        'excavation.fissured='
        'excavation.vibration='
        'excavation.disturbed='
        'excavation.layers='
        'excavation.water='
        'excavation.distress='
        'excavation.open_for='
        'excavation.protection='
        'excavation.finding='
        'excavation.hazard='
        'excavation.crossing='
        'excavation.spoil_distance='
        'excavation.located='
        'excavation.tolerance='
        'excavation.sewer='
        'excavation.sewer_below='
        'excavation.speed='
        'excavation.lane='
      )
      ;;
    'STYLE')
      words=(
        'push-on'
        'mechanical'
        'flanged'
        'caulked bell'
        'mortared bell'
        'sleeve coupling'
        'threaded'
        'welded'
        'fused'
        'solvent cement'
        'soldered'
      )
      ;;
    'THREAD')
      words=(
        'AWWA taper'
        'NPT'
        'ISO 7-1'
      )
      ;;
    'WHAT')
      words=(
        'job'
        'rules'
        'plan'
        'map'
        'machine'
        'settings'
        'verdict'
        'record'
        'approved'
      )
      ;;
  esac
}

# What an option named takes: "-" for nothing.
_mainbore_option() {
  local option
  local -a facts
  for option in "${options[@]}"; do
    read -ra facts <<< "$option"
    [[ " ${facts[*]:2} " == *" $1 "* ]] && value=${facts[1]}
  done
}

# The options that may stand here: not those given before, but for the repeatable.
_mainbore_open_options() {
  local option name
  local -a facts
  for option in "${options[@]}"; do
    read -ra facts <<< "$option"
    if [[ ${facts[0]} == once ]]; then
      for name in "${facts[@]:2}"; do [[ " ${given[*]} " == *" $name "* ]] && continue 2; done
    fi
    words+=("${facts[@]:2}")
  done
}

# The words that begin as what is typed does. The shell replaces only what stands behind the last '=' or ':'.
_mainbore_offer() {
  local typed=$1 kept=$2 quote='' word
  case $typed in
    [\"\']*) quote=${typed:0:1} typed=${typed:1} ;;
    *) typed=${typed//\\/} ;;
  esac
  for word in "${words[@]}"; do
    [[ $word == "$typed"* && $word != "$kept" ]] || continue
    word=${word#"$kept"}
    [[ $quote ]] || word=${word// /\\ }
    COMPREPLY+=("$word")
  done
  [[ ${COMPREPLY[0]} == *= ]] && compopt -o nospace 2> /dev/null
}

_mainbore() {
  local path=mainbore commands='' value='' kind=none token i last operand=0
  local -a operands options line=() given=() words=()
  COMPREPLY=()
  for ((i = 1; i <= COMP_CWORD; ++i)); do  # --set=a.b is one word to the program and three to the shell
    token=${COMP_WORDS[i]}
    if ((${#line[@]})) && [[ $token == [=:] || ${COMP_WORDS[i - 1]} == [=:] ]]; then
      line[-1]+=$token
    else
      line+=("$token")
    fi
  done
  last=${line[-1]}

  _mainbore_command "$path"
  for token in "${line[@]:0:${#line[@]}-1}"; do
    if [[ $value && $value != - ]]; then
      value=
    elif [[ $token == -?* ]]; then
      given+=("${token%%=*}")
      [[ $token == *=* ]] || _mainbore_option "$token"
    elif [[ " $commands " == *" $token "* ]]; then
      path+=" $token"
      _mainbore_command "$path"
    else
      ((++operand))
    fi
    [[ $value == - ]] && value=
  done

  if [[ ${COMP_WORDS[COMP_CWORD - 1]} == [\<\>]* ]]; then
    kind=file
  elif [[ $value ]]; then
    _mainbore_values "$value"
  elif [[ $last == --*=* ]]; then
    _mainbore_option "${last%%=*}"
    last=${last#*=}
    _mainbore_values "$value"
  elif [[ $last == -* ]]; then
    _mainbore_open_options
  elif [[ $commands ]]; then
    ((operand)) || read -ra words <<< "$commands"
  else
    i=$((${#operands[@]} - 1))
    ((operand > i && i >= 0)) && [[ ${operands[i]} == *... ]] && operand=$i
    value=${operands[operand]%...}
    if [[ $value ]]; then _mainbore_values "$value"; else _mainbore_open_options; fi
  fi

  # What is not offered here is left to the shell: names of files, or nothing.
  [[ $kind == file ]] || compopt +o default 2> /dev/null
  [[ $kind == directory ]] && compopt -o dirnames 2> /dev/null
  token=${COMP_WORDS[COMP_CWORD]}
  [[ $token == [=:] ]] && token=
  _mainbore_offer "$last" "${last%"$token"}"
}

complete -o default -F _mainbore mainbore
