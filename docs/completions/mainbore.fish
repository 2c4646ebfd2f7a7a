# Completion of mainbore for fish.
# Made from the program's option table by tests/docs/pages.cpp: not to be edited.

set -g __mainbore_commands \
    'mainbore' \
    'mainbore plan' \
    'mainbore batch' \
    'mainbore explain' \
    'mainbore identify' \
    'mainbore trial' \
    'mainbore table' \
    'mainbore rules' \
    'mainbore schema' \
    'mainbore record' \
    'mainbore new'

# What stands for a value, a line each.
function __mainbore_values
    switch $argv[1]
        case 'ACTION'
            printf '%s\n' \
                'check' \
                'show' \
                'diff'
        case 'CODE'
            printf '%s\n' \
                'identity.not-water' \
                'identity.unknown' \
                'identity.unconfirmed' \
                'main.not-in-catalogue' \
                'main.class-unknown' \
                'main.class-not-made' \
                'main.class-word' \
                'main.by-recollection' \
                'main.size-metric' \
                'main.year-contradicts' \
                'main.not-yet-laid' \
                'main.od-contradicts' \
                'main.od-unsettled' \
                'main.od-unknown' \
                'main.readings-disagree' \
                'main.wall-impossible' \
                'main.wall-thin' \
                'main.wall-unmeasured' \
                'main.condition-unseen' \
                'main.condition-pitted' \
                'main.condition-poor' \
                'main.encased' \
                'main.curved' \
                'main.curve-unknown' \
                'main.temperature-outside' \
                'main.temperature-unmeasured' \
                'main.freezing' \
                'service.not-smaller' \
                'direct.not-allowed' \
                'direct.over-maximum' \
                'direct.no-rule' \
                'direct.few-threads' \
                'direct.thin-wall' \
                'direct.marginal-threads' \
                'direct.recalled-thread' \
                'direct.thread-unknown' \
                'direct.wrong-thread' \
                'direct.hole-too-large' \
                'direct.wall-unknown' \
                'saddle.not-allowed' \
                'saddle.over-maximum' \
                'saddle.no-rule' \
                'saddle.hole-too-large' \
                'saddle.by-engineer' \
                'section.too-little-left' \
                'several.need-room' \
                'several.no-room' \
                'several.too-many' \
                'several.not-taken' \
                'sleeve.not-allowed' \
                'sleeve.over-maximum' \
                'sleeve.no-rule' \
                'sleeve.to-be-chosen' \
                'method.not-as-asked' \
                'method.none' \
                'pressure.over-pipe-rating' \
                'pressure.over-feed-limit' \
                'pressure.over-machine-rating' \
                'pressure.over-stop-rating' \
                'pressure.over-saddle-rating' \
                'pressure.over-wet-tap-limit' \
                'pressure.surge-over-rating' \
                'pressure.surge-over-fitting' \
                'pressure.rating-unknown' \
                'pressure.too-warm' \
                'pressure.needs-regulator' \
                'pressure.low-over-line' \
                'pressure.system-low' \
                'machine.unspecified' \
                'machine.wrong-size' \
                'machine.no-powered-feed' \
                'machine.figures-missing' \
                'machine.no-saddle' \
                'machine.gasket-small' \
                'machine.figures-wrong' \
                'machine.stud-overloaded' \
                'machine.chain-short' \
                'machine.travel-short' \
                'machine.reach-unknown' \
                'machine.valve-not-clear' \
                'machine.tool-strikes-far-wall' \
                'machine.push-by-hand' \
                'machine.chain-ovals-pipe' \
                'makeup.by-trial' \
                'makeup.trial-off' \
                'place.not-looked' \
                'place.moved' \
                'place.no-room' \
                'place.clock' \
                'place.stagger' \
                'place.defect-near' \
                'place.other-line' \
                'value.recalled' \
                'service.size-not-made' \
                'service.not-tabulated' \
                'service.existing-lead' \
                'service.existing-galvanized' \
                'service.not-checked' \
                'service.code-unnamed' \
                'service.fixture-unknown' \
                'service.curve-unread' \
                'service.starved' \
                'service.too-high' \
                'service.too-fast' \
                'service.meter-over' \
                'service.meter-continuous' \
                'service.line-small' \
                'clean.stock-too-weak' \
                'clean.cannot-scour' \
                'clean.as-main' \
                'pit.not-checked' \
                'pit.not-located' \
                'pit.soil-not-type-a' \
                'pit.claimed-undisturbed' \
                'pit.not-examined' \
                'pit.protective-system' \
                'pit.engineer' \
                'pit.distress' \
                'pit.water' \
                'pit.egress' \
                'pit.atmosphere' \
                'pit.guardrail' \
                'pit.spoil-too-near' \
                'pit.sewer-near' \
                'pit.main-hangs' \
                'main.not-tapped' \
                'main.perhaps-not-tapped' \
                'season.closed' \
                'season.date-unknown' \
                'place.cover' \
                'place.cover-unknown' \
                'service.tap-small' \
                'rules.looser' \
                'pressure.over-line-rating' \
                'order.fact-unread' \
                'rules.consent' \
                'rules.consent-unnamed' \
                'several.over-maximum' \
                'service.tap-too-fast' \
                'service.meter-share' \
                'service.line-against-tap' \
                'sleeve.too-small' \
                'sleeve.hole-too-large' \
                'approved.none-fits' \
                'approved.no-tool-fits' \
                'service.cover' \
                'service.cover-unknown' \
                'service.line-near' \
                'service.line-near-unknown' \
                'service.line-close' \
                'main.air-cold' \
                'main.air-unknown' \
                'service.dwellings-size' \
                'service.dwellings-unknown' \
                'service.dwellings-unlisted' \
                'service.premises' \
                'service.premises-unknown' \
                'json.syntax' \
                'json.encoding' \
                'json.too-large' \
                'call.wrong-usage' \
                'data.unreadable' \
                'job.duplicate-key' \
                'job.unknown-key' \
                'job.unknown-value' \
                'job.wrong-type' \
                'job.no-unit' \
                'job.unknown-unit' \
                'job.wrong-unit' \
                'job.not-a-quantity' \
                'job.out-of-range' \
                'job.missing' \
                'job.contradiction' \
                'rules.duplicate-key' \
                'rules.unknown-key' \
                'rules.unknown-value' \
                'rules.wrong-type' \
                'rules.wrong-quantity' \
                'rules.out-of-range' \
                'rules.contradiction' \
                'rules.looser-without-reason' \
                'rules.missing' \
                'csv.quote' \
                'csv.too-large' \
                'csv.ragged' \
                'csv.encoding' \
                'csv.header' \
                'csv.no-column' \
                'map.duplicate-key' \
                'map.unknown-key' \
                'map.unknown-value' \
                'map.wrong-type' \
                'map.contradiction' \
                'map.missing' \
                'order.two-materials' \
                'order.not-a-wall' \
                'order.out-of-map-range' \
                'order.internal-error' \
                'order.decimal' \
                'order.not-a-feature' \
                'order.year' \
                'order.day-count' \
                'settings.approved-not-given' \
                'settings.duplicate-key' \
                'settings.rules-not-given' \
                'settings.unknown-key' \
                'settings.unknown-value' \
                'settings.wrong-type' \
                'ledger.broken-line' \
                'readings.duplicate-key' \
                'readings.unknown-key' \
                'readings.unknown-value' \
                'readings.wrong-type' \
                'approved.duplicate-key' \
                'approved.missing' \
                'approved.unknown-key' \
                'approved.unknown-value' \
                'approved.wrong-type'
        case 'CONTENT'
            printf '%s\n' \
                'water' \
                'unknown' \
                'reclaimed water' \
                'raw water' \
                'sewage' \
                'gas' \
                'petroleum' \
                'other'
        case DIR
            __fish_complete_directories (commandline -ct)
        case 'MATERIAL'
            printf '%s\n' \
                'ductile iron' \
                'cast iron' \
                'PVC' \
                'PVCO' \
                'polyethylene' \
                'asbestos cement' \
                'steel' \
                'concrete cylinder' \
                'galvanized steel' \
                'copper'
        case 'NAME=VALUE'
            printf '%s\n' \
                'order=' \
                'tap_number=' \
                'date=' \
                'start=' \
                'end=' \
                'line_pressure=' \
                'od=' \
                'circumference=' \
                'wall=' \
                'pipe_temperature=' \
                'joint_distance=' \
                'surge=' \
                'class=' \
                'condition=' \
                'clock=' \
                'cover=' \
                'station=' \
                'tie_1=' \
                'tie_1_from=' \
                'tie_2=' \
                'tie_2_from=' \
                'longitude=' \
                'latitude=' \
                'method=' \
                'tool=' \
                'tool_state=' \
                'stop=' \
                'tap_depth=' \
                'hand_turns=' \
                'wrench_turns=' \
                'threads_showing=' \
                'leak_check=' \
                'coupon=' \
                'tapped_by=' \
                'seen_by=' \
                'remarks=' \
                'air_temperature='
        case 'PATH=VALUE'
            printf '%s\n' \
                'id=' \
                'place=' \
                'date=' \
                'air_temperature=' \
                'crew=' \
                'note=' \
                'main.material=' \
                'main.size=' \
                'main.pressure=' \
                'main.pressure_low=' \
                'main.class=' \
                'main.standard=' \
                'main.installed=' \
                'main.od=' \
                'main.circumference=' \
                'main.wall=' \
                'main.condition=' \
                'main.encased=' \
                'main.curved=' \
                'main.temperature=' \
                'main.surge=' \
                'main.occasional_surge=' \
                'main.rating=' \
                'main.carries=' \
                'main.cover=' \
                'main.cover_measured=' \
                'main.pressurized=' \
                'nearby[0].what=' \
                'nearby[0].along=' \
                'nearby[0].clock=' \
                'nearby[0].size=' \
                'service.size=' \
                'service.thread=' \
                'service.method=' \
                'service.clock=' \
                'service.stop_rating=' \
                'service.saddle_rating=' \
                'service.stop_length=' \
                'service.saddle_height=' \
                'service.existing=' \
                'service.meter=' \
                'service.dwellings=' \
                'service.premises=' \
                'service.line.material=' \
                'service.line.size=' \
                'service.line.length=' \
                'service.line.rise=' \
                'service.line.friction=' \
                'service.line.c=' \
                'service.line.elbows=' \
                'service.line.couplings=' \
                'service.line.rating=' \
                'service.line.cover=' \
                'service.line.gas=' \
                'service.line.electric=' \
                'service.line.sewer=' \
                'service.demand.flow=' \
                'service.demand.fixture_units=' \
                'service.demand.fixtures=' \
                'service.demand.code=' \
                'service.demand.supply=' \
                'service.demand.continuous=' \
                'service.demand.sprinklers=' \
                'service.demand.sprinkler_flow=' \
                'service.demand.shared=' \
                'service.demand.residual=' \
                'service.trial.depth=' \
                'service.trial.hand_turns=' \
                'service.trial.wrench_turns=' \
                'service.trial.threads_showing=' \
                'service.trial.date=' \
                'service.trial.tool=' \
                'machine.profile=' \
                'machine.feed=' \
                'machine.extensions=' \
                'machine.title=' \
                'machine.smallest_tap=' \
                'machine.largest_tap=' \
                'machine.hand_limit=' \
                'machine.powered_limit=' \
                'machine.body_rating=' \
                'machine.bar_diameter=' \
                'machine.bar_travel=' \
                'machine.standoff=' \
                'machine.valve_height=' \
                'machine.feed_pitch=' \
                'machine.adapter_standoff=' \
                'machine.saddle_od_from=' \
                'machine.saddle_od_to=' \
                'machine.chain_length=' \
                'machine.chain_extension=' \
                'machine.anchor_offset=' \
                'machine.anchor_height=' \
                'machine.chain_thickness=' \
                'machine.gasket_diameter=' \
                'machine.stud_diameter=' \
                'machine.studs=' \
                'tool.length=' \
                'tool.lead=' \
                'tool.insertion_length=' \
                'sanitary.stock=' \
                'sanitary.solution=' \
                'excavation.soil=' \
                'excavation.strength=' \
                'excavation.earth=' \
                'excavation.granular=' \
                'excavation.fissured=' \
                'excavation.vibration=' \
                'excavation.disturbed=' \
                'excavation.layers=' \
                'excavation.water=' \
                'excavation.distress=' \
                'excavation.open_for=' \
                'excavation.protection=' \
                'excavation.finding=' \
                'excavation.hazard=' \
                'excavation.crossing=' \
                'excavation.spoil_distance=' \
                'excavation.located=' \
                'excavation.tolerance=' \
                'excavation.sewer=' \
                'excavation.sewer_below=' \
                'excavation.speed=' \
                'excavation.lane='
        case 'STYLE'
            printf '%s\n' \
                'push-on' \
                'mechanical' \
                'flanged' \
                'caulked bell' \
                'mortared bell' \
                'sleeve coupling' \
                'threaded' \
                'welded' \
                'fused' \
                'solvent cement' \
                'soldered'
        case 'THREAD'
            printf '%s\n' \
                'AWWA taper' \
                'NPT' \
                'ISO 7-1'
        case 'WHAT'
            printf '%s\n' \
                'job' \
                'rules' \
                'plan' \
                'map' \
                'machine' \
                'settings' \
                'verdict' \
                'record' \
                'approved'
    end
end

# Whether the line stands behind a command, and none of the names that follow "flag" or "value" has been used.
# A name just before the cursor that takes a value has yet to get it.
function __mainbore_at
    set -l path mainbore
    set -l given (commandline -opc)
    set -e given[1]
    for word in $given
        contains -- "$path $word" $__mainbore_commands
        and set path "$path $word"
    end
    test "$path" = "$argv[1]"
    or return 1
    test "$argv[2]" = value
    and set -e given[-1]
    for name in $argv[3..-1]
        contains -- $name (string replace -r '=.*' '' -- $given)
        and return 1
    end
    return 0
end

complete -c mainbore -f

# mainbore
complete -c mainbore -n '__mainbore_at "mainbore"' -a plan -d 'Plans one job'
complete -c mainbore -n '__mainbore_at "mainbore"' -a batch -d 'Plans many orders: a record for each, or the report of a week'
complete -c mainbore -n '__mainbore_at "mainbore"' -a explain -d 'Says what a code of a finding or an error means'
complete -c mainbore -n '__mainbore_at "mainbore"' -a identify -d 'Lists the mains that fit what was measured on a bare pipe'
complete -c mainbore -n '__mainbore_at "mainbore"' -a trial -d 'Works out the depth to tap to from trial taps in scrap of the same pipe'
complete -c mainbore -n '__mainbore_at "mainbore"' -a table -d 'The largest taps by main, size and class, under the rules in force'
complete -c mainbore -n '__mainbore_at "mainbore"' -a rules -d 'Checks a utility\'s own rules, shows what is in force, or what differs'
complete -c mainbore -n '__mainbore_at "mainbore"' -a schema -d 'Writes the JSON Schema (draft-07) of what the program reads and writes: job, rules, plan,'
complete -c mainbore -n '__mainbore_at "mainbore"' -a record -d 'Judges the readings of a finished tap, and writes its record; keeps a ledger of them'
complete -c mainbore -n '__mainbore_at "mainbore"' -a new -d 'Asks for the facts of a job on a terminal, and writes the job file'
complete -c mainbore -n '__mainbore_at "mainbore" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore" flag --version' -l version -d 'version of the program and edition of its tables'

# mainbore plan
complete -c mainbore -n '__mainbore_at "mainbore plan"' -F -d 'JOB'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore plan"' -l set -r -f -a '(__mainbore_values PATH=VALUE)' -d 'one fact by its path, over the file\'s'
complete -c mainbore -n '__mainbore_at "mainbore plan" value --format' -l format -r -f -a 'text json html calc calc-html' -d 'of the result'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag --why' -l why -d 'with text, behind the card: what it rests on, and what was not checked'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag --materials' -l materials -d 'with text, behind the card: what to load'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag --steps' -l steps -d 'with text, behind the card: the order of work, and what to do when it goes wrong'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag --full' -l full -d 'with text: the card and all of these'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag --what-if' -l what-if -d 'how far each fact may move before the verdict changes'
complete -c mainbore -n '__mainbore_at "mainbore plan" value --language' -l language -r -f -a 'en es' -d 'of what a crew reads, text and html: en (English) or es (Spanish)'
complete -c mainbore -n '__mainbore_at "mainbore plan" value --approved' -l approved -r -F -d 'the utility\'s approved fittings (JSON or CSV), which plans choose from'
complete -c mainbore -n '__mainbore_at "mainbore plan" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore plan"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore plan" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore plan" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore plan" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore plan" flag --no-settings' -l no-settings -d 'no settings file is read'

# mainbore batch
complete -c mainbore -n '__mainbore_at "mainbore batch"' -F -d 'ORDERS'
complete -c mainbore -n '__mainbore_at "mainbore batch" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --in' -l in -r -f -a 'csv ndjson json geojson' -d 'how the orders are written: csv, ndjson (a JSON object a line), json (an array) or geojson (features, a collection or a sequence)'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --format' -l format -r -f -a 'text ndjson csv html geojson' -d 'text (the report of a week), html (the same with field sheets), ndjson or csv (a record an order), geojson (the features of GeoJSON given back with their verdicts)'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --sheets' -l sheets -r -f -a '(__mainbore_values DIR)' -d 'with text or html: a field sheet an order, named by its id, into this folder, with an index'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --language' -l language -r -f -a 'en es' -d 'of the field sheets, with --sheets or html: en (English) or es (Spanish)'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --days' -l days -r -f -a '(__mainbore_values DAYS)' -d 'with text or html: the days whose load list is wanted, the first and the last with .. between, or one'
complete -c mainbore -n '__mainbore_at "mainbore batch" flag --full' -l full -d 'with ndjson: the whole plan of each order'
complete -c mainbore -n '__mainbore_at "mainbore batch" flag --decisions' -l decisions -d 'with ndjson: the plan without its words, load and steps'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --map' -l map -r -F -d 'which column, member or property is which fact (JSON)'
complete -c mainbore -n '__mainbore_at "mainbore batch"' -l keep -r -f -a 'COLUMNS all' -d 'columns, members or properties of the orders that the records carry on, with commas between, or all'
complete -c mainbore -n '__mainbore_at "mainbore batch" flag --columns' -l columns -d 'only show what each column was read as'
complete -c mainbore -n '__mainbore_at "mainbore batch" flag --all' -l all -d 'with --columns: every value that was not understood, with its count'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --delimiter' -l delimiter -r -f -a 'comma tab semicolon' -d 'between cells'
complete -c mainbore -n '__mainbore_at "mainbore batch" flag --no-rows' -l no-rows -d 'records without row and line: the same in any piece of a file'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --fail-on' -l fail-on -r -f -a 'hold office no-go unreadable never' -d 'exit 0 unless an order is this bad or worse (office: a hold that the office clears)'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --jobs' -l jobs -r -f -a '(__mainbore_values N)' -d 'threads'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --approved' -l approved -r -F -d 'the utility\'s approved fittings (JSON or CSV), which plans choose from'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore batch"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore batch" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore batch" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every order (JSON)'

# mainbore explain
complete -c mainbore -n '__mainbore_at "mainbore explain"' -f -a '(__mainbore_values CODE)' -d 'CODE'
complete -c mainbore -n '__mainbore_at "mainbore explain" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore explain" flag --list' -l list -d 'every code with its title'

# mainbore identify
complete -c mainbore -n '__mainbore_at "mainbore identify" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --circumference' -l circumference -r -f -a '(__mainbore_values LENGTH)' -d 'by tape round the cleaned pipe (in, ft, mm)'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --od' -l od -r -f -a '(__mainbore_values LENGTH)' -d 'outside diameter, by caliper (in, mm)'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --wall' -l wall -r -f -a '(__mainbore_values LENGTH)' -d 'wall, by gauge (in, mm)'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --installed' -l installed -r -f -a '(__mainbore_values YEAR)' -d 'year laid, by the record'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --magnet' -l magnet -r -f -a 'yes no' -d 'does a magnet stick'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --sound' -l sound -r -f -a 'ring dull' -d 'of a light blow'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --joint' -l joint -r -f -a '(__mainbore_values STYLE)' -d 'push-on, mechanical, flanged, "caulked bell", "sleeve coupling" ...'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --carries' -l carries -r -f -a '(__mainbore_values CONTENT)' -d 'what it was proved to carry by two means: water ...'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --format' -l format -r -f -a 'text json' -d 'of the result'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore identify"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore identify" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore identify" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore identify" flag --no-settings' -l no-settings -d 'no settings file is read'

# mainbore trial
complete -c mainbore -n '__mainbore_at "mainbore trial" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore trial"' -l trial -r -f -a '(__mainbore_values TRIAL)' -d 'one trial'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --threads' -l threads -r -f -a '(__mainbore_values NUMBER)' -d 'threads per inch, counted on the stop'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --wrench' -l wrench -r -f -a '(__mainbore_values TURNS)' -d 'turns by wrench wanted'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --showing' -l showing -r -f -a '(__mainbore_values THREADS)' -d 'threads to be left showing'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --least' -l least -r -f -a '(__mainbore_values NUMBER)' -d 'trials that must agree (default 3)'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --format' -l format -r -f -a 'text json' -d 'of the result'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore trial"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore trial" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore trial" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore trial" flag --no-settings' -l no-settings -d 'no settings file is read'

# mainbore table
complete -c mainbore -n '__mainbore_at "mainbore table" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore table"' -l material -r -f -a '(__mainbore_values MATERIAL)' -d 'of the main'
complete -c mainbore -n '__mainbore_at "mainbore table" value --from' -l from -r -f -a '(__mainbore_values SIZE)' -d 'smallest main (default 4 in)'
complete -c mainbore -n '__mainbore_at "mainbore table" value --to' -l to -r -f -a '(__mainbore_values SIZE)' -d 'largest main (default 12 in)'
complete -c mainbore -n '__mainbore_at "mainbore table" flag --all-sizes' -l all-sizes -d 'mains of every size'
complete -c mainbore -n '__mainbore_at "mainbore table" value --thread' -l thread -r -f -a '(__mainbore_values THREAD)' -d 'of the stop\'s inlet: "AWWA taper", NPT or "ISO 7-1"'
complete -c mainbore -n '__mainbore_at "mainbore table" value --pressure' -l pressure -r -f -a '(__mainbore_values PRESSURE)' -d 'of the line (psi, kPa, bar)'
complete -c mainbore -n '__mainbore_at "mainbore table" value --machine' -l machine -r -F -d 'a job file (JSON) whose machine is meant'
complete -c mainbore -n '__mainbore_at "mainbore table" value --format' -l format -r -f -a 'text csv json html' -d 'of the result'
complete -c mainbore -n '__mainbore_at "mainbore table" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore table"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore table" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore table" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore table" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore table" flag --no-settings' -l no-settings -d 'no settings file is read'

# mainbore rules
complete -c mainbore -n '__mainbore_at "mainbore rules"; and not __fish_seen_subcommand_from check show diff' -f -a '(__mainbore_values ACTION)' -d 'ACTION'
complete -c mainbore -n '__mainbore_at "mainbore rules"; and __fish_seen_subcommand_from check show diff' -F -d 'SET'
complete -c mainbore -n '__mainbore_at "mainbore rules" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore rules" value --format' -l format -r -f -a 'text json' -d 'of the result'
complete -c mainbore -n '__mainbore_at "mainbore rules" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore rules"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore rules" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore rules" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore rules" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore rules" flag --no-settings' -l no-settings -d 'no settings file is read'

# mainbore schema
complete -c mainbore -n '__mainbore_at "mainbore schema"' -f -a '(__mainbore_values WHAT)' -d 'WHAT'
complete -c mainbore -n '__mainbore_at "mainbore schema" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore schema" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore schema" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'

# mainbore record
complete -c mainbore -n '__mainbore_at "mainbore record"' -F -d 'JOB'
complete -c mainbore -n '__mainbore_at "mainbore record"' -F -d 'READINGS'
complete -c mainbore -n '__mainbore_at "mainbore record" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore record"' -l set -r -f -a '(__mainbore_values NAME=VALUE)' -d 'one reading by its name, over the file\'s'
complete -c mainbore -n '__mainbore_at "mainbore record" value --append' -l append -r -F -d 'also add the record to this ledger (JSON lines)'
complete -c mainbore -n '__mainbore_at "mainbore record" value --export' -l export -r -F -d 'write out a ledger: the last record of each tap'
complete -c mainbore -n '__mainbore_at "mainbore record" value --order' -l order -r -f -a '(__mainbore_values ORDER)' -d 'with --export: the taps of this work order alone'
complete -c mainbore -n '__mainbore_at "mainbore record" value --tools' -l tools -r -F -d 'count the holes of each tool in a ledger, and list the depths tapped to'
complete -c mainbore -n '__mainbore_at "mainbore record" value --format' -l format -r -f -a 'text json csv geojson' -d 'of a record and of tools text or json, default text'
complete -c mainbore -n '__mainbore_at "mainbore record" value --language' -l language -r -f -a 'en es' -d 'of what a crew reads, text and html: en (English) or es (Spanish)'
complete -c mainbore -n '__mainbore_at "mainbore record" value --approved' -l approved -r -F -d 'the utility\'s approved fittings (JSON or CSV), which plans choose from'
complete -c mainbore -n '__mainbore_at "mainbore record" value --units' -l units -r -f -a 'us si' -d 'of the result: us (in, ft, psi) or si (mm, m, kPa)'
complete -c mainbore -n '__mainbore_at "mainbore record"' -l rules -r -F -d 'a utility\'s own rules (JSON), laid over the defaults'
complete -c mainbore -n '__mainbore_at "mainbore record" value --data' -l data -r -f -a '(__mainbore_values DIR)' -d 'tables to use in place of those built in'
complete -c mainbore -n '__mainbore_at "mainbore record" value -o --output' -s o -l output -r -F -d 'write the result there, not to standard output'
complete -c mainbore -n '__mainbore_at "mainbore record" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore record" flag --no-settings' -l no-settings -d 'no settings file is read'

# mainbore new
complete -c mainbore -n '__mainbore_at "mainbore new"' -F -d 'JOB'
complete -c mainbore -n '__mainbore_at "mainbore new" flag -h --help' -s h -l help -d 'this page'
complete -c mainbore -n '__mainbore_at "mainbore new" flag --replace' -l replace -d 'also over a file that is there already'
complete -c mainbore -n '__mainbore_at "mainbore new" value --language' -l language -r -f -a 'en es' -d 'of what a crew reads, text and html: en (English) or es (Spanish)'
complete -c mainbore -n '__mainbore_at "mainbore new" value --settings' -l settings -r -F -d 'machine, rules, units and crew said once for every job (JSON), in place of $XDG_CONFIG_HOME/mainbore/settings.json'
complete -c mainbore -n '__mainbore_at "mainbore new" flag --no-settings' -l no-settings -d 'no settings file is read'
