//! The name of a food among spoken words: descriptors, a noun, and what a machine wrote apart ('corn meal').

use crate::lexicon::{self, Class, class};
use crate::speech::Speech;
use crate::token::Token;

use super::misheard;
use super::words::singular;

/// A food that was named.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Food {
    /// Its words as they go on the page.
    pub(super) name: String,
    /// The same words one by one, small and in the singular, the noun last.
    pub(super) words: Vec<String>,
    /// Index of its first word.
    pub(super) from: usize,
    /// Index after its last word.
    pub(super) next: usize,
    /// 'the', 'that', 'my' stand before it: it is known already.
    pub(super) definite: bool,
    /// The words were heard so, and taken for this food by their sound.
    pub(super) heard: Option<String>,
}

impl Food {
    /// The noun, small and in the singular.
    pub(super) fn noun(&self) -> &str {
        self.words.last().map_or("", String::as_str)
    }

    /// Whether the two name the same food: the same noun, and one says no more than the other.
    pub(super) fn same(&self, other: &Food) -> bool {
        // 'the hot grease' is the bacon grease: how warm or worked it is makes no other food.
        let passing = Class::TEMPERATURE | Class::STATE | Class::SIZE | Class::PREPARED;
        let kept = |word: &String| class(word).is(Class::FOOD) || !class(word).is(passing);
        let all =
            |few: &[String], many: &[String]| few.iter().filter(|word| kept(word)).all(|word| many.contains(word));
        let share =
            self.noun() == other.noun() || self.words.len() == 1 && other.words.iter().any(|word| word == self.noun());
        share && (all(&self.words, &other.words) || all(&other.words, &self.words))
    }
}

/// No name has more words.
const LONGEST: usize = 6;

/// What stands before a food.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum How {
    /// Nothing that asks for one.
    Bare,
    /// A number.
    Counted,
    /// A unit and 'of', so that a food must follow.
    Measured,
}

/// The food named at this word. `listed` says that no stops part the words, so that foods may follow each other.
pub(super) fn food(tokens: &[Token], at: usize, how: How, listed: bool) -> Option<Food> {
    let (start, definite) = articles(tokens, at);
    let mut names = Names::default();
    let mut index = start;
    while index < start + LONGEST {
        let Some(step) = step(tokens, index, &names, how, listed) else {
            break;
        };
        names.take(tokens, index, step);
        index = names.at;
    }
    if names.end == 0 {
        return (how == How::Measured)
            .then(|| misheard::food(tokens, start, definite))
            .flatten();
    }
    names.words.truncate(names.kept);
    names.spelled.truncate(names.kept);
    let mut found = Food {
        name: names.spelled.join(" "),
        words: names.words,
        from: start,
        next: names.end,
        definite,
        heard: None,
    };
    // A word nobody knows before the noun may be another word: 'tour dal'.
    let odd = tokens
        .get(start)
        .filter(|t| t.class == Class::default() && found.words.len() > 1 && how != How::Bare);
    if let Some(meant) = odd.and_then(|t| misheard::kind(&t.lower)) {
        found.heard = Some(found.name.clone());
        let rest: Vec<&str> = found.name.split(' ').skip(1).collect();
        found.name = format!("{meant} {}", rest.join(" "));
        if let Some(first) = found.words.first_mut() {
            *first = singular(meant);
        }
    }
    // 'neck of lamb', 'leg of mutton': the animal is the noun.
    if names.part && tokens.get(names.end).is_some_and(|t| t.is("of")) {
        let inner = food(tokens, names.end + 1, How::Counted, listed);
        if let Some(inner) = inner.filter(|inner| inner.next < names.end + 5 && !inner.definite) {
            found.name = format!("{} of {}", found.name, inner.name);
            found.words.extend(inner.words);
            found.next = inner.next;
        }
    }
    let alone = found.words.len() == 1 && is_everyday(found.noun()) && how != How::Measured;
    (!alone).then_some(found)
}

/// The words of a name as they come in.
#[derive(Debug, Default)]
struct Names {
    spelled: Vec<String>,
    words: Vec<String>,
    /// How many of the words are kept: those up to the last noun.
    kept: usize,
    /// Index after the last noun; nought when there is none.
    end: usize,
    at: usize,
    /// The last noun is a part of an animal or fruit.
    part: bool,
}

/// What a word adds to a name.
enum Step {
    /// A word that describes what follows.
    Before,
    /// The noun.
    Noun,
    /// The noun in two words that belong together: 'corn meal'.
    Joined(String),
    /// A name that is kept whole, of so many words.
    Kept(usize),
    /// Two words that are written with a hyphen and describe: 'self raising'.
    Pair(String),
}

impl Names {
    fn take(&mut self, tokens: &[Token], index: usize, step: Step) {
        let lower = |at: usize| tokens.get(at).map_or(String::new(), |t| t.lower.to_string());
        let (words, length, noun) = match step {
            Step::Before => (vec![lower(index)], 1, false),
            Step::Noun => (vec![lower(index)], 1, true),
            Step::Joined(word) => (vec![word], 2, true),
            Step::Pair(word) => (vec![word], 2, false),
            Step::Kept(length) => ((index..index + length).map(lower).collect(), length, true),
        };
        self.words.extend(words.iter().map(|word| singular(word)));
        self.spelled.extend(words);
        self.at = index + length;
        if noun {
            (self.end, self.kept) = (self.at, self.words.len());
            self.part = tokens.get(index).is_some_and(|t| t.class.is(Class::PART)) && length == 1;
        }
    }
}

/// Skips 'of', articles and words that say nothing of the food; whether it is spoken of as known.
fn articles(tokens: &[Token], at: usize) -> (usize, bool) {
    let (mut index, mut definite) = (at, false);
    while let Some(token) = tokens.get(index).filter(|_| index < at + 4) {
        let known = token.is_one_of("the that my those these this your our her his their");
        if !known && !token.is_one_of("of a an just really nice good lovely") {
            break;
        }
        definite |= known;
        index += 1;
    }
    (index, definite)
}

fn step(tokens: &[Token], index: usize, names: &Names, how: How, listed: bool) -> Option<Step> {
    let token = tokens.get(index).filter(|t| t.is_word())?;
    let next = tokens.get(index + 1).filter(|t| t.is_word());
    if let Some(length) = kept(tokens, index) {
        return (names.end == 0).then_some(Step::Kept(length));
    }
    let joined = next.map(|next| format!("{}{}", token.lower.as_str(), next.lower.as_str()));
    if let Some(word) = joined.filter(|word| class(word).is(Class::FOOD) && word.len() > 6 && !word.contains("lea")) {
        return Some(Step::Joined(word));
    }
    let pair = next.map(|next| format!("{}-{}", token.lower.as_str(), next.lower.as_str()));
    let describes = Class::KIND | Class::STATE | Class::BOUGHT;
    if let Some(pair) = pair.filter(|pair| lexicon::listed(pair).is(describes) && names.end == 0) {
        return Some(Step::Pair(pair));
    }
    // 'eight thighs skin on': how they come.
    if after_noun(names) && left_on(tokens, index).is_some() {
        return None;
    }
    // '… the seeds, juice of two limes': another food begins.
    if after_noun(names) && token.is_any(&["juice", "zest", "rind"]) && next.is_some_and(|next| next.is("of")) {
        return None;
    }
    let of = token.class;
    let food = is_food(token);
    let after = names.end > 0;
    if food {
        let again = names.words.contains(&singular(&token.lower));
        let second = of.is(Class::CARRIER | Class::PART | Class::LIQUID) || is_second(&token.lower);
        // 'six corn tortillas': several of the second.
        let several = how == How::Counted
            && token.lower.ends_with('s')
            && !names.spelled.last().is_some_and(|word| word.ends_with('s'));
        return (!after || !again && (second || several || !listed)).then_some(Step::Noun);
    }
    // 'one cinnamon stick', 'three cardamom pods'.
    let piece = token.is_any(&["stick", "sticks", "pod", "pods", "cube", "cubes"]);
    if after && piece && how == How::Counted && names.at == index {
        return Some(Step::Noun);
    }
    // 'bay leaves', 'star anise', 'spring onions'.
    if of.is(Class::FOOD) && !after && next.is_some_and(is_food) {
        return Some(Step::Before);
    }
    let before = of.is(Class::STATE
        | Class::KIND
        | Class::BOUGHT
        | Class::OIL
        | Class::TEMPERATURE
        | Class::SIZE
        | Class::PREPARED);
    let plain = of == Class::default() && token.speech == Speech::default() && !lexicon::verb(&token.lower);
    let food_next = next.is_some_and(|next| is_food(next) || next.class.is(Class::KIND | Class::STATE | Class::BOUGHT));
    if after {
        // 'butter beans', but not 'lemon red onion' unless a kind stands between.
        return (before && of.is(Class::KIND) && next.is_some_and(is_food)).then_some(Step::Before);
    }
    let unknown = plain && how != How::Bare && next.is_some_and(is_food);
    (before || unknown && food_next).then_some(Step::Before)
}

/// 'skin on', 'bone in', 'heads off', what a piece is sold with or without: the index after it.
pub(super) fn left_on(tokens: &[Token], at: usize) -> Option<usize> {
    let part = tokens
        .get(at)?
        .is_one_of("skin skins bone bones shell shells head heads tail tails stalk stalks rind");
    let stays = tokens.get(at + 1)?.is_any(&["on", "in", "off", "out"]);
    let goes_on = tokens
        .get(at + 2)
        .is_some_and(|t| t.is_one_of("the a an my your it with"));
    (part && stays && !goes_on).then_some(at + 2)
}

fn after_noun(names: &Names) -> bool {
    names.end > 0
}

/// Nouns that take the food before them: 'tomato purée', 'pepper flakes'.
fn is_second(word: &str) -> bool {
    const SECOND: &str = "paste purée puree powder flakes leaf leaves sauce seed seeds hock hocks soda syrup zest juice cheese \
        crumbs breadcrumbs grease dripping cube cubes shallots anise cabbage barley beans peas lentils noodles mushrooms \
        shoulder shin essence extract cress tomatoes vinegar mustard starch flour";
    SECOND.split_whitespace().any(|known| known == word)
}

/// A name of several words that is kept whole, and how many there are.
fn kept(tokens: &[Token], index: usize) -> Option<usize> {
    let first = tokens.get(index)?;
    let fits = |phrase: &&Vec<&'static str>| {
        let part = tokens.get(index..index + phrase.len());
        part.is_some_and(|part| part.iter().zip(phrase.iter()).all(|(token, word)| token.is(word)))
    };
    lexicon::kept(&first.lower).iter().filter(fits).map(Vec::len).max()
}

/// Words of the food table that as often mean something else in speech: alone they name no food.
const EVERYDAY: &str = "back side end head tail heart feet foot hand leg legs blade roe skin skins skimmed spring ice bay fat rind \
    tops stems stalks liquid roll rolls split sour star garnish toppings bone bones cheek tongue collar white whites marrow \
    flesh pulp pickling penne quick";

/// Whether a word can be the noun of a food.
pub(super) fn is_food(token: &Token) -> bool {
    let everyday = token.is_one_of(EVERYDAY);
    token.is_word() && (token.class.is(Class::PART) || token.class.is(Class::FOOD) && !everyday)
}

/// Whether a word alone cannot be taken for a food that goes in.
pub(super) fn is_everyday(word: &str) -> bool {
    EVERYDAY.split_whitespace().any(|known| known == word)
}
