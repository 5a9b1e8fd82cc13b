//! Mistakes shown in the maker's own file.

use crate::spans::Mistake;
use annotate_snippets::{AnnotationKind, Level, Origin, Renderer, Snippet};

/// All mistakes in a file, each with the line it is on, what is wrong there, and what to write instead.
pub fn render_mistakes(file: &str, text: &str, mistakes: &[Mistake], colour: bool) -> String {
    let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
    mistakes.iter().map(|one| renderer.render(&[report(file, text, one)]).to_string() + "\n\n").collect()
}

fn report<'a>(file: &'a str, text: &'a str, mistake: &'a Mistake) -> annotate_snippets::Group<'a> {
    let mut group =
        Level::ERROR.primary_title(&mistake.what).elements(None::<Snippet<'a, annotate_snippets::Annotation<'a>>>);
    if mistake.at.is_some() || !mistake.also.is_empty() {
        let mut snippet = Snippet::source(text).path(file);
        if let Some(at) = &mistake.at {
            snippet = snippet.annotation(AnnotationKind::Primary.span(at.span.clone()).label(&at.words));
        }
        for label in &mistake.also {
            snippet = snippet.annotation(AnnotationKind::Context.span(label.span.clone()).label(&label.words));
        }
        group = group.element(snippet);
    } else {
        group = group.element(Origin::path(file));
    }
    group.element(Level::HELP.message(&mistake.help))
}
